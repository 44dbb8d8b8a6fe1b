import { execFileSync, spawnSync } from 'node:child_process'
import { statSync } from 'node:fs'
import { runProgram, type ServerUser } from './server-binaries'
import { StoreUnavailable } from './store-unavailable'

const NAME = 'postgres'

/**
 * The account that the embedded server runs as: null (our own), or, when we are root, whoever owns the cluster that is there, else the user
 * `postgres`, made when absent. @throws StoreUnavailable `start-failed` when it cannot be made
 */
export async function serverUser(cluster: string): Promise<ServerUser> {
  if (process.getuid?.() !== 0) return null
  const owner = statSync(cluster, { throwIfNoEntry: false })
  if (owner && owner.uid !== 0) return { uid: owner.uid, gid: owner.gid }
  const known = idsOf(NAME)
  if (known) return known
  await runProgram('groupadd', [NAME], null).catch(() => null)
  await runProgram('useradd', ['-g', NAME, NAME], null).catch(() => null)
  const made = idsOf(NAME)
  if (!made)
    throw new StoreUnavailable(
      'start-failed',
      `Running as root, and the user ${NAME} that PostgreSQL needs could not be made: run as another user, or set DATABASE_URL.`,
    )
  return made
}

function idsOf(name: string): ServerUser {
  try {
    const id = (flag: string) =>
      Number.parseInt(execFileSync('id', [flag, name], { stdio: ['ignore', 'pipe', 'ignore'], encoding: 'utf8' }), 10)
    return { uid: id('-u'), gid: id('-g') }
  } catch {
    return null
  }
}

/** Check that the server's account can enter a folder. @throws StoreUnavailable `folder-unreachable`, naming what to change */
export function demandReachable(folder: string, user: ServerUser): void {
  if (!user) return
  const tried = spawnSync('/bin/sh', ['-c', 'cd "$1"', 'sh', folder], { cwd: '/', ...user, stdio: 'ignore' })
  if (tried.status === 0) return
  throw new StoreUnavailable(
    'folder-unreachable',
    `The user ${NAME} cannot enter ${folder}, and PostgreSQL does not run as root: open the folders above it (chmod o+x), use another place (UNDERWRAP_DATA), or do not run as root.`,
  )
}
