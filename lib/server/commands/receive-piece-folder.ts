import { createHash } from 'node:crypto'
import { mkdir, open, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Sha256 } from '@/lib/domain/facts/fact'
import type { PieceStanding } from '@/lib/domain/outbox/exchange'
import { done, type Result, refused } from '@/lib/domain/result'

/** A person's pieces are theirs alone: another's, or another tenant's, do not exist for them. */
export type PieceOwner = { tenant: string; person: string }
export type PieceRefusal =
  | { code: 'piece-misplaced'; offset: number }
  | { code: 'digest-differs' }
  | { code: 'pieces-full'; maxBytes: number }

/** What one person may have lying here, unfinished or not yet cited by a fact. */
const OWNER_BYTES_AT_MOST = 2_000_000_000
/** Long enough for a device that comes up from below once a week. */
export const PIECES_KEPT_MS = 14 * 24 * 3_600_000
const SWEEP_EVERY_MS = 3_600_000

export type PieceFolder = {
  standingOf(owner: PieceOwner, sha256: Sha256): Promise<PieceStanding>
  /** Add a piece behind what is there. At the end the digest is checked; bytes of another digest are dropped. */
  append(
    owner: PieceOwner,
    piece: { sha256: Sha256; offset: number; sizeBytes: number },
    bytes: Uint8Array,
  ): Promise<Result<PieceStanding, PieceRefusal>>
  /** The bytes of a whole photo; null when there is none, or when it was taken into the photo store already. */
  read(owner: PieceOwner, sha256: Sha256): Promise<Uint8Array | null>
  drop(owner: PieceOwner, sha256: Sha256): Promise<void>
  /** The photo lies in the photo store now: only a mark of it stays, so that it is not asked for again. */
  markTaken(owner: PieceOwner, sha256: Sha256): Promise<void>
  /** Remove what nothing was added to for `PIECES_KEPT_MS`. */
  sweep(): Promise<void>
}

/**
 * Pieces of photos on their way, in files of this machine: `HASH-OF-OWNER/DIGEST.part`, `.whole` once its digest is proved, `.taken` once a fact cites it. A team with several
 * machines must send one person to one of them, or a photo begins anew on the other.
 */
export function createPieceFolder(root: string, nowMs: () => number = () => Date.now()): PieceFolder {
  let sweptAt = 0
  const folderOf = ({ tenant, person }: PieceOwner) =>
    join(
      root,
      createHash('sha256')
        .update(JSON.stringify([tenant, person]))
        .digest('hex')
        .slice(0, 40),
    )
  const pathOf = (owner: PieceOwner, sha256: Sha256, state: 'part' | 'whole' | 'taken') =>
    join(folderOf(owner), `${sha256}.${state}`)

  async function standingOf(owner: PieceOwner, sha256: Sha256): Promise<PieceStanding> {
    for (const state of ['taken', 'whole'] as const)
      if ((await sizeOf(pathOf(owner, sha256, state))) !== null) return { offset: 0, isWhole: true }
    return { offset: (await sizeOf(pathOf(owner, sha256, 'part'))) ?? 0, isWhole: false }
  }

  async function append(
    owner: PieceOwner,
    { sha256, offset, sizeBytes }: { sha256: Sha256; offset: number; sizeBytes: number },
    bytes: Uint8Array,
  ): Promise<Result<PieceStanding, PieceRefusal>> {
    const standing = await standingOf(owner, sha256)
    if (standing.isWhole) return done(standing)
    if (offset !== standing.offset || offset + bytes.length > sizeBytes)
      return refused({ code: 'piece-misplaced', offset: standing.offset })
    if (offset === 0) {
      await mkdir(folderOf(owner), { recursive: true })
      if ((await sizeOfFolder(folderOf(owner))) + sizeBytes > OWNER_BYTES_AT_MOST)
        return refused({ code: 'pieces-full', maxBytes: OWNER_BYTES_AT_MOST })
    }
    const path = pathOf(owner, sha256, 'part')
    const file = await open(path, 'a')
    try {
      await file.writeFile(bytes)
      if (offset + bytes.length === sizeBytes) await file.sync()
    } finally {
      await file.close()
    }
    if (offset + bytes.length < sizeBytes) return done({ offset: offset + bytes.length, isWhole: false })
    const digest = createHash('sha256')
      .update(await readFile(path))
      .digest('hex')
    if (digest !== sha256) {
      await rm(path, { force: true })
      return refused({ code: 'digest-differs' })
    }
    await rename(path, pathOf(owner, sha256, 'whole'))
    return done({ offset: 0, isWhole: true })
  }

  async function sweep(): Promise<void> {
    for (const entry of await readdir(root, { withFileTypes: true, recursive: true }).catch(noneWhenAbsent)) {
      const path = join(entry.parentPath, entry.name)
      const found = entry.isFile() ? await stat(path).catch(nullWhenAbsent) : null
      if (found && nowMs() - found.mtimeMs > PIECES_KEPT_MS) await rm(path, { force: true })
    }
  }

  return {
    standingOf,
    append: (owner, piece, bytes) =>
      oneAtATime(pathOf(owner, piece.sha256, 'part'), async () => {
        if (nowMs() - sweptAt > SWEEP_EVERY_MS) {
          sweptAt = nowMs()
          await sweep()
        }
        return append(owner, piece, bytes)
      }),
    read: (owner, sha256) => readFile(pathOf(owner, sha256, 'whole')).catch(nullWhenAbsent),
    drop: (owner, sha256) => rm(pathOf(owner, sha256, 'whole'), { force: true }),
    async markTaken(owner, sha256) {
      await mkdir(folderOf(owner), { recursive: true })
      await writeFile(pathOf(owner, sha256, 'taken'), '')
      await rm(pathOf(owner, sha256, 'whole'), { force: true })
    },
    sweep,
  }
}

const running = new Map<string, Promise<unknown>>()

/** Pieces of one photo one after the other, also when a cut-off sending and its repetition meet. */
async function oneAtATime<T>(path: string, work: () => Promise<T>): Promise<T> {
  const before = running.get(path) ?? Promise.resolve()
  const mine = before.then(work, work)
  running.set(path, mine)
  try {
    return await mine
  } finally {
    if (running.get(path) === mine) running.delete(path)
  }
}

async function sizeOf(path: string): Promise<number | null> {
  return (await stat(path).catch(nullWhenAbsent))?.size ?? null
}

async function sizeOfFolder(folder: string): Promise<number> {
  let sizeBytes = 0
  for (const name of await readdir(folder)) sizeBytes += (await sizeOf(join(folder, name))) ?? 0
  return sizeBytes
}

function nullWhenAbsent(error: NodeJS.ErrnoException): null {
  if (error.code === 'ENOENT') return null
  throw error
}

function noneWhenAbsent(error: NodeJS.ErrnoException): [] {
  if (error.code === 'ENOENT') return []
  throw error
}
