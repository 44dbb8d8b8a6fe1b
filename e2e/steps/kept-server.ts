import { type ChildProcess, spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const START_WITHIN_MS = 240_000

/** A server of its own that a test stops and starts again over the same store. */
export class KeptServer {
  readonly url: string
  private readonly folder = mkdtempSync(join(tmpdir(), 'underwrap-e2e-kept-'))
  private readonly clockFile: string
  private child: ChildProcess | null = null

  /** @param program what is started: the prepared store, or another that serves the folder in UNDERWRAP_DATA */
  constructor(
    readonly port: number,
    private readonly program: readonly string[] = ['e2e/serve-kept.ts'],
  ) {
    chmodSync(this.folder, 0o755)
    this.url = `http://localhost:${port}`
    this.clockFile = join(this.folder, 'clock')
  }

  /** The moment that the server takes as now. */
  setClock(clock: string, day = '05-18'): void {
    writeFileSync(this.clockFile, `2026-${day}T${clock}:00+01:00`)
  }

  /** Start it, unless it runs. */
  async start(): Promise<void> {
    if (this.child && this.child.exitCode === null) return
    this.child = spawn(process.execPath, ['--import', 'tsx', ...this.program], {
      stdio: 'inherit',
      env: {
        ...process.env,
        PORT: String(this.port),
        KEPT_DATA: this.folder,
        KEPT_CLOCK: this.clockFile,
        UNDERWRAP_DATA: this.folder,
        DATABASE_URL: '',
      },
    })
    const until = Date.now() + START_WITHIN_MS
    while (!(await this.answers())) {
      if (this.child.exitCode !== null || Date.now() > until) throw new Error('the server did not start')
      await new Promise((settle) => setTimeout(settle, 300))
    }
  }

  /** Stop it and wait until it is gone. */
  async stop(): Promise<void> {
    const { child } = this
    if (!child || child.exitCode !== null) return
    const gone = new Promise((settle) => child.once('exit', settle))
    child.kill('SIGTERM')
    await gone
    this.child = null
  }

  async remove(): Promise<void> {
    await this.stop()
    rmSync(this.folder, { recursive: true, force: true })
  }

  private async answers(): Promise<boolean> {
    try {
      return (await fetch(`${this.url}/sign-in`)).ok
    } catch {
      return false
    }
  }
}
