import { createHash, type Hash } from 'node:crypto'
import type { FileHandle } from 'node:fs/promises'

const BUFFER_BYTES = 1 << 18
const TEXT_CHARACTERS = 1 << 15

/** Writes a file from its start in order, a quarter of a megabyte at a time, and hashes what it writes. */
export class FileSink {
  private readonly hash: Hash = createHash('sha256')
  private waiting: Uint8Array[] = []
  private waitingBytes = 0
  private text = ''
  private writing: Promise<unknown> = Promise.resolve()
  sizeBytes = 0

  constructor(private readonly file: FileHandle) {}

  /** Take text (one byte a character) or bytes. Small texts are gathered: tens of thousands of them make one piece. */
  async put(part: string | Uint8Array): Promise<void> {
    this.sizeBytes += part.length
    if (typeof part === 'string') {
      this.text += part
      if (this.text.length > TEXT_CHARACTERS) this.takeText()
    } else {
      this.takeText()
      this.take(part)
    }
    if (this.waitingBytes > BUFFER_BYTES) await this.flush()
  }

  private takeText(): void {
    if (this.text === '') return
    this.take(Buffer.from(this.text, 'latin1'))
    this.text = ''
  }

  private take(bytes: Uint8Array): void {
    this.waiting.push(bytes)
    this.waitingBytes += bytes.length
    this.hash.update(bytes)
  }

  /** Hand what waits to the system; an earlier write is awaited first. */
  async flush(): Promise<void> {
    this.takeText()
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
    this.takeText()
    const copy = this.hash.copy()
    for (const part of more) copy.update(typeof part === 'string' ? Buffer.from(part, 'latin1') : part)
    return copy.digest()
  }
}
