import * as z from 'zod'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import type { DossierProgress } from '@/lib/dossier/build-dossier'
import type { Task } from '@/lib/server/jobs/task'
import { issueDossier } from './issue-dossier'

const Input = z.strictObject({
  repair: StreamId,
  purpose: z.string().min(1),
  changes: z.array(z.string()),
  person: PersonId,
})
const EVERY_PHOTOS = 20

/** The queue's task that builds, stores and issues a dossier; tells how many photos are written. Its answer is the issue. @throws Error with one plain line when nothing was issued */
export const issueDossierTask: Task = async ({ store, tenant, tell }, json) => {
  const { repair, purpose, changes, person } = Input.parse(json)
  let telling: Promise<void> = Promise.resolve()
  const onProgress = (progress: DossierProgress): void => {
    if (
      progress.step === 'writing' &&
      progress.photosWritten % EVERY_PHOTOS !== 0 &&
      progress.photosWritten !== progress.photosInAll
    )
      return
    telling = telling.then(() =>
      tell(
        progress.step === 'writing'
          ? { doneCount: progress.photosWritten, totalCount: progress.photosInAll, note: 'writing photos' }
          : { note: progress.step },
      ),
    )
  }
  const issued = await issueDossier(store, tenant, { repair, purpose, changes, actor: person, onProgress })
  await telling
  if (issued.ok) return issued.value
  switch (issued.error.code) {
    case 'not-found':
      throw new Error('There is no such repair.')
    case 'changes-missing':
      throw new Error(`Say what changed since revision ${issued.error.supersedes}.`)
    case 'record-moving':
      throw new Error('The record moved while the dossier was built; issue it again.')
  }
}
