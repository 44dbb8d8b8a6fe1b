'use client'
import type { CaptureRefusal } from '@/lib/capture/outbox/outbox-terms'
import { numbersHere } from '@/lib/capture/site/opened-here'
import type { ProjectPack } from '@/lib/domain/capture/project-pack'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import { done, type Result, refused } from '@/lib/domain/result'
import { alone } from './alone'
import { keepUsed, numbersUsed } from './numbers-used'
import type { PageOutbox } from './page-outbox'
import { readNow } from './read-now'

const LOCK = 'underwrap-numbers'

/**
 * Open a repair on this device under a number of its own: the number is used up first, then the opening goes into the outbox. Two windows at once never take one number. Refuses `number-used`, and
 * whatever keeping refuses; then the number is free again.
 */
export async function keepOpening(
  page: PageOutbox,
  project: ProjectPack,
  body: BodyOf<'repair-opened'>,
): Promise<Result<null, CaptureRefusal | { code: 'number-used'; number: string }>> {
  const now = await readNow(project.utcOffset, project.clockKind)
  const { id } = await page.device()
  return alone(LOCK, async () => {
    const used = await numbersUsed(page)
    const { number } = body
    if (!numbersHere(project, id, await page.outbox.entries(), used).includes(number))
      return refused({ code: 'number-used', number })
    await keepUsed(page, [...used, number])
    const kept = await page.capture({
      command: 'open-repair',
      input: { stream: `repair:${number}`, observedAt: now, enteredAt: now, body },
    })
    if (kept.ok) return done(null)
    await keepUsed(page, used)
    return kept
  })
}
