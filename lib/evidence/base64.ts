/** Base64 with padding (RFC 4648 section 4). */
export function base64Of(bytes: Uint8Array): string {
  let text = ''
  for (const byte of bytes) text += String.fromCharCode(byte)
  return btoa(text)
}

/** Bytes of a base64 text; null unless it is exactly what `base64Of` writes: no spaces, full padding, no stray bits. */
export function parseBase64(text: string): Uint8Array | null {
  if (!/^[A-Za-z0-9+/]*={0,2}$/.test(text) || text.length % 4 !== 0) return null
  const bytes = Uint8Array.from(atob(text), (character) => character.charCodeAt(0))
  return base64Of(bytes) === text ? bytes : null
}
