import { spawn } from 'node:child_process'
import { connect } from 'node:net'
import { buildIfStale } from './build-if-stale.mjs'
import { installIfStale, root } from './install-if-stale.mjs'

/** Install and build what is missing, then serve until stopped: `demo` or `real`. */
export async function host(mode) {
  if (process.argv.includes('--test-clock') || process.env.UNDERWRAP_TEST_CLOCK) {
    console.error('underwrap: --test-clock is refused: this start is not one for tests.')
    process.exit(1)
  }
  // A build under a running server would break it: whoever serves on this port keeps its build.
  if (!(await isTaken(Number(process.env.PORT || 3000)))) {
    installIfStale()
    buildIfStale()
  }
  const child = spawn(process.execPath, ['--import', 'tsx', 'lib/cli/serve.ts', mode], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  })
  // npm's shell does not pass a signal on: when it is gone, nobody is left to stop us.
  const parent = process.ppid
  if (process.env.npm_lifecycle_event) setInterval(() => process.ppid !== parent && child.kill('SIGTERM'), 1000).unref()
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal))
  child.on('close', (code) => process.exit(code ?? 1))
}

function isTaken(port) {
  return new Promise((settle) => {
    const socket = connect({ port, host: '127.0.0.1' })
    socket.once('connect', () => {
      socket.destroy()
      settle(true)
    })
    socket.once('error', () => settle(false))
  })
}
