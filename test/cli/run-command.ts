import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Run `underwrap` as a person does, on the data folder named. */
export function runCommand(
  parameters: string[],
  env: Record<string, string>,
): Promise<{ code: number | null; out: string; error: string }> {
  const { DATABASE_URL: _elsewhere, ...own } = process.env
  const child = spawn(process.execPath, ['--import', 'tsx', 'lib/cli/underwrap.ts', ...parameters], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...own, ...env },
  })
  let out = ''
  let error = ''
  child.stdout.on('data', (chunk) => {
    out += chunk
  })
  child.stderr.on('data', (chunk) => {
    error += chunk
  })
  return new Promise((settle) => child.on('close', (code) => settle({ code, out, error })))
}
