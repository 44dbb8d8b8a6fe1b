import { spawnSync } from 'node:child_process'
import { existsSync, statSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** Root of the project. */
export const root = fileURLToPath(new URL('../..', import.meta.url))

/** Run a program of this project in the foreground; ends this process with its code when it fails. */
export function demand(program, parameters, options = {}) {
  const ran = spawnSync(program, parameters, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'], ...options })
  if (ran.error) {
    console.error(`underwrap: ${program} does not run here: ${ran.error.message}`)
    process.exit(1)
  }
  if (ran.status !== 0) process.exit(ran.status ?? 1)
}

/** Install the packages that package-lock.json names, when they are not there or are older than it. */
export function installIfStale() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`underwrap: Node ${process.versions.node} is too old, 20.19 or newer is needed.`)
    process.exit(1)
  }
  const installed = `${root}/node_modules/.package-lock.json`
  if (existsSync(installed) && statSync(installed).mtimeMs >= statSync(`${root}/package-lock.json`).mtimeMs) return
  console.log('Installing packages')
  demand(process.platform === 'win32' ? 'npm.cmd' : 'npm', ['ci', '--loglevel=error', '--no-audit', '--no-fund'], {
    shell: process.platform === 'win32',
  })
}
