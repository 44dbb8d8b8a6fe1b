import { createHash, type Hash } from 'node:crypto'
import type { FileHandle } from 'node:fs/promises'

const BUFFER_BYTES = 1 << 18

/** Writes a file from its start in order, a quarter of a megabyte at a time, and hashes what it writes. */
export class FileSink {
  private readonly hash: Hash = createHash('sha256')
  private waiting: Uint8Array[] = []
  private waitingBytes = 0
  private writing: Promise<unknown> = Promise.resolve()
  sizeBytes = 0

  constructor(private readonly file: FileHandle) {}

  async put(part: string | Uint8Array): Promise<void> {
    const bytes = typeof part === 'string' ? Buffer.from(part, 'latin1') : part
    this.waiting.push(bytes)
    this.sizeBytes += bytes.length
    this.waitingBytes += bytes.length
    if (this.waitingBytes > BUFFER_BYTES) await this.flush()
    this.hash.update(bytes)
  }

  /** Hand what waits to the system; an earlier write is awaited first. */
  async flush(): Promise<void> {
    await this.writing
    if (this.waiting.length > 0) this.writing = this.file.writev(this.waiting)
    this.writing.catch(() => undefined)
    this.waiting = []
    this.waitingBytes = 0
  }

  /** Everything written and synced. */
  async close(): Promise<void> {
    await this.flush()
    await this.writing
    await this.file.sync()
  }

  /** SHA-256 so far, followed by more bytes that are not written. */
  sha256With(...more: readonly (string | Uint8Array)[]): Buffer {
    const copy = this.hash.copy()
    for (const part of more) copy.update(typeof part === 'string' ? Buffer.from(part, 'latin1') : part)
    return copy.digest()
  }
}
