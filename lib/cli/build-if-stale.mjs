import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { demand, root } from './install-if-stale.mjs'

const SOURCES = ['app', 'lib', 'db', 'public', 'proxy.ts', 'instrumentation.ts', 'next.config.mjs', 'package-lock.json', 'tsconfig.json']

/** Build the app when there is no build, or a source is newer than it. */
export function buildIfStale() {
  const built = join(root, '.next', 'BUILD_ID')
  if (existsSync(built) && SOURCES.every((source) => newest(join(root, source)) <= statSync(built).mtimeMs)) return
  demand(process.execPath, [join('node_modules', 'next', 'dist', 'bin', 'next'), 'build'], { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1' } })
}

function newest(path) {
  if (!existsSync(path)) return 0
  const { mtimeMs } = statSync(path)
  if (!statSync(path).isDirectory()) return mtimeMs
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), mtimeMs)
}
