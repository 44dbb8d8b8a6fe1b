import { spawn } from 'node:child_process'
import { buildIfStale } from './build-if-stale.mjs'
import { installIfStale, root } from './install-if-stale.mjs'

/** Install and build what is missing, then serve until stopped: `demo` or `real`. */
export function host(mode) {
  if (process.argv.includes('--test-clock') || process.env.UNDERWRAP_TEST_CLOCK) {
    console.error('underwrap: --test-clock is refused: this start is not one for tests.')
    process.exit(1)
  }
  installIfStale()
  buildIfStale()
  const child = spawn(process.execPath, ['--import', 'tsx', 'lib/cli/serve.ts', mode], { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] })
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal))
  child.on('close', (code) => process.exit(code ?? 1))
}
