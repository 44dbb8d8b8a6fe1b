import { type ChildProcess, spawn } from 'node:child_process'
import { chmodSync, existsSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const START_WITHIN_MS = 240_000

/** The built app over a demonstration of its own. `stop` ends the server and leaves its address dead; `remove` clears its folder. */
export type DemoServer = { url: string; stop(): Promise<void>; remove(): Promise<void> }

/** Serve the present build over a fresh demonstration, or over the one in `UNDERWRAP_DATA`. @throws Error when nothing is built or the server does not start */
export async function startDemoServer(): Promise<DemoServer> {
  if (!existsSync('.next/BUILD_ID')) throw new Error('nothing is built: run npm run build first')
  const given = process.env.UNDERWRAP_DATA
  const folder = given ?? mkdtempSync(join(tmpdir(), 'bench-site-'))
  if (!given) chmodSync(folder, 0o755)
  const port = await freePort()
  const url = `http://localhost:${port}`
  const child = spawn(process.execPath, ['--import', 'tsx', 'lib/cli/serve.ts', 'demo'], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, UNDERWRAP_DATA: folder, PORT: String(port), DATABASE_URL: '' },
  })
  const until = Date.now() + START_WITHIN_MS
  while (!(await answers(url))) {
    if (child.exitCode !== null || Date.now() > until) throw new Error('the server did not start')
    await new Promise((settle) => setTimeout(settle, 300))
  }
  const stop = () => end(child)
  return {
    url,
    stop,
    async remove() {
      await stop()
      if (!given) rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return
  const gone = new Promise((settle) => child.once('exit', settle))
  child.kill('SIGTERM')
  await gone
}

async function answers(url: string): Promise<boolean> {
  try {
    return (await fetch(`${url}/sign-in`)).ok
  } catch {
    return false
  }
}

function freePort(): Promise<number> {
  return new Promise((settle) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => settle(typeof address === 'object' && address ? address.port : 0))
    })
  })
}
