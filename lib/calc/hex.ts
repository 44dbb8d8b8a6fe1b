/** Bytes as lowercase hexadecimal text. */
export function showHex(bytes: Uint8Array): string {
  let text = ''
  for (const byte of bytes) text += byte.toString(16).padStart(2, '0')
  return text
}

/** The bytes of a hexadecimal text of even length, or null for any other text. */
export function parseHex(text: string): Uint8Array | null {
  if (text.length % 2 !== 0 || !/^[0-9a-fA-F]*$/.test(text)) return null
  return Uint8Array.from({ length: text.length / 2 }, (_, index) =>
    Number.parseInt(text.slice(2 * index, 2 * index + 2), 16),
  )
}
