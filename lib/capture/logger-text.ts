/** The text of a logger's file: UTF-8, else UTF-16 where its mark says so, else the single-byte letters that older loggers write. */
export function loggerTextOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes)
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch (cause) {
    if (!(cause instanceof TypeError)) throw cause
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
