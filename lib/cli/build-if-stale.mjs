import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { root } from './install-if-stale.mjs'

const SOURCES = [
  'app',
  'lib',
  'db',
  'public',
  'proxy.ts',
  'instrumentation.ts',
  'next.config.mjs',
  'package-lock.json',
  'tsconfig.json',
]

/** Build the app when there is no build, or a source is newer than it. */
export function buildIfStale() {
  const built = join(root, '.next', 'BUILD_ID')
  if (existsSync(built) && SOURCES.every((source) => newest(join(root, source)) <= statSync(built).mtimeMs)) return
  console.log('Building the app')
  const next = join('node_modules', 'next', 'dist', 'bin', 'next')
  const ran = spawnSync(process.execPath, [next, 'build'], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    maxBuffer: 64 * 1024 * 1024,
    env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
  })
  if (ran.status === 0) return
  process.stderr.write(ran.stdout)
  process.stderr.write(ran.stderr)
  console.error('underwrap: the app could not be built.')
  process.exit(1)
}

function newest(path) {
  if (!existsSync(path)) return 0
  const { mtimeMs } = statSync(path)
  if (!statSync(path).isDirectory()) return mtimeMs
  return readdirSync(path).reduce((latest, name) => Math.max(latest, newest(join(path, name))), mtimeMs)
}
