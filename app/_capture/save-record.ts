'use client'
import { v7 } from 'uuid'
import { answerOf } from '@/app/_ui/answer-of'
import { correctRecordAction, recordPointAction } from '@/app/(work)/actions/point-actions'
import { changesBetween } from '@/lib/capture/changes-between'
import type { OutboxOwner } from '@/lib/capture/outbox/outbox-entry'
import type { Captured, CaptureRefusal, DeviceStated } from '@/lib/capture/outbox/outbox-terms'
import { FactId } from '@/lib/domain/facts/fact'
import type { PointRecord } from '@/lib/domain/records/record'
import type { PaperStatement } from '@/lib/domain/tally/paper-copy'
import type { Moment } from '@/lib/domain/time'
import type { Refusal } from '@/lib/server/commands/refusal'
import type { LateReason } from './late-entry'
import { type PageOutbox, pageOutbox } from './page-outbox'

export type SaveTarget = { repair: string; point: string; attempt: number }
/** A refusal of the server or of this device: what was keyed then stays in the draft. */
export type SaveRefusal = Refusal | CaptureRefusal | { code: 'nothing-changed' } | { code: 'not-refused' }

export type Saving = {
  target: SaveTarget
  record: PointRecord
  observedAt: Moment
  enteredAt: Moment
  late: LateReason | null
  replaces?: string
  was?: PointRecord
  reason?: string
  /** What a copy from paper states beside the record. */
  paper?: PaperStatement
}

/** The statement of one record, or of the correction of one; null when a correction changes nothing. */
function statementOf(saving: Saving): Captured | null {
  const { target, record, observedAt, enteredAt, late, replaces, was, reason, paper } = saving
  const changes = was ? changesBetween(was, record) : []
  if (was && changes.length === 0) return null
  const entry = {
    stream: `repair:${target.repair}`,
    observedAt,
    enteredAt,
    ...(late ? { late: { reason: late.reason.trim(), source: late.source } } : {}),
  }
  return replaces
    ? {
        command: 'correct-record',
        input: { ...entry, body: { target: replaces, changes, reason: (reason ?? '').trim() } },
      }
    : {
        command: 'record-point',
        input: {
          ...entry,
          ...(paper ? { observedBy: paper.observedBy } : {}),
          body: {
            point: target.point,
            attempt: target.attempt,
            record,
            ...(paper ? { transcribed: paper.transcribed } : {}),
          },
        },
      }
}

/**
 * Send one record, or the correction of one. When the server does not answer it is kept in this device's outbox under the same id and device, so that it is received once
 * whether the first sending arrived or not.
 */
export async function saveRecord(saving: Saving, owner: OutboxOwner): Promise<SaveRefusal | null> {
  const statement = statementOf(saving)
  if (!statement) return { code: 'nothing-changed' }
  const page = await pageOutbox(owner)
  const id = v7()
  const device = await page.device()
  const answer = await sendStatement(statement, id, device)
  if (answer !== 'no-answer') return answer
  const kept = await page.capture({ ...statement, id, device })
  return kept.ok ? null : kept.error
}

/** Keep one record in this device's outbox, from where it goes on its own; in the place of a refused entry when one is named. */
export async function keepRecord(saving: Saving, page: PageOutbox, again: string | null): Promise<SaveRefusal | null> {
  const statement = statementOf(saving)
  if (!statement) return { code: 'nothing-changed' }
  if (!again) {
    const kept = await page.capture(statement)
    return kept.ok ? null : kept.error
  }
  const dealt = await page.outbox.sendAgain(again, { input: statement.input, device: await page.device() })
  if (!dealt.ok) return dealt.error.code === 'reason-missing' ? { code: 'not-refused' } : dealt.error
  void page.send()
  return null
}

async function sendStatement(
  { command, input }: Captured,
  id: string,
  device: DeviceStated,
): Promise<Refusal | 'no-answer' | null> {
  const asked = { ...input, id: FactId.parse(id), device }
  const answer = await answerOf(() =>
    command === 'correct-record' ? correctRecordAction(asked) : recordPointAction(asked),
  )
  if (answer.ok) return null
  return answer.error.code === 'no-answer' ? 'no-answer' : answer.error
}
