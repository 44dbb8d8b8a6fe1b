import { createReadStream, createWriteStream } from 'node:fs'
import { mkdtemp, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { finished } from 'node:stream/promises'
import * as z from 'zod'
import { done, type Result, refused } from '@/lib/domain/result'
import { exportLog as writeLog } from '@/lib/server/log/export-log'
import { LogBroken } from '@/lib/server/log/log-broken'
import { AUDIT_BARRED, trailReachOf } from '@/lib/server/views/audit-reach'
import { command } from './command'
import type { Desk } from './desk'
import type { OutgoingFile } from './open-dossier'
import type { Refusal } from './refusal'

/**
 * The whole log of the actor's tenant as one file that anyone can check: no form. It is written to a file first, so that a log that cannot be signed is said and
 * never half sent. Refuses `not-allowed` for who is neither auditor nor inspector, `not-found` for who is so in some projects only, since the file
 * would show the others, and `not-decided` when the log cannot be signed.
 */
export const exportLog = command(z.strictObject({}), async (desk) => {
  const reach = await trailReachOf(desk)
  if (!reach) return refused(AUDIT_BARRED)
  if (!reach.isWhole) return refused({ code: 'not-found' })
  const folder = await mkdtemp(join(tmpdir(), 'underwrap-log-'))
  const forget = () => rm(folder, { recursive: true, force: true })
  const file = await fileOf(desk, join(folder, 'log.txt')).catch(async (cause: unknown) => {
    await forget()
    throw cause
  })
  if (!file.ok) {
    await forget()
    return file
  }
  const { path, size, sizeBytes } = file.value
  const body = createReadStream(path)
  body.once('close', () => void forget())
  return done<OutgoingFile>({
    body: Readable.toWeb(body) as ReadableStream,
    fileName: `underwrap-log-${desk.actor.tenant.replaceAll(/[^A-Za-z0-9._-]/g, '-')}-${size}.txt`,
    sizeBytes,
  })
})

async function fileOf(
  { store, actor }: Desk,
  path: string,
): Promise<Result<{ path: string; size: number; sizeBytes: number }, Refusal>> {
  const file = createWriteStream(path)
  try {
    const { size } = await writeLog(store, actor.tenant, file, actor.person)
    file.end()
    await finished(file)
    return done({ path, size, sizeBytes: (await stat(path)).size })
  } catch (error) {
    file.destroy()
    if (error instanceof LogBroken) return refused({ code: 'not-decided', why: error.message, detail: [] })
    throw error
  }
}
