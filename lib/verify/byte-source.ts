/**
 * Bytes to be checked, wherever they lie: a file on disk or one chosen in a browser. `read` gives exactly the bytes asked for. `readShared`, where there is one, gives them in a
 * buffer that is used again: they are good until the second call after.
 */
export type ByteSource = {
  sizeBytes: number
  read(offset: number, length: number): Promise<Uint8Array>
  readShared?(offset: number, length: number): Promise<Uint8Array>
}

/** SHA-256 as the place offers it: over a stream in order, and over whole byte strings beside it. */
export type Hasher = {
  stream(): { update(bytes: Uint8Array): void; digest(): Uint8Array }
  /** The bytes may be changed by the caller once the call has returned. */
  digest(bytes: Uint8Array): Promise<Uint8Array>
}

/** A source over bytes in memory. @throws RangeError when more is read than there is */
export function sourceOfBytes(bytes: Uint8Array): ByteSource {
  return {
    sizeBytes: bytes.length,
    async read(offset, length) {
      if (offset < 0 || length < 0 || offset + length > bytes.length)
        throw new RangeError(`Expected a range within ${bytes.length} bytes, received ${offset}+${length}`)
      return bytes.subarray(offset, offset + length)
    },
  }
}
