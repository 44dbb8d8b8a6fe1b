/** SHA-256 of a blob in lower-case hex. @throws TypeError on an address that is not secure: the caller says so before capture */
export async function digestOfBlob(blob: Blob): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await blob.arrayBuffer())
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
