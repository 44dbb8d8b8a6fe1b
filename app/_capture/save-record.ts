'use client'
import { v7 } from 'uuid'
import { correctRecordAction, recordPointAction } from '@/app/(work)/actions/point-actions'
import { changesBetween } from '@/lib/capture/changes-between'
import type { PointRecord } from '@/lib/domain/records/record'
import type { Moment } from '@/lib/domain/time'
import type { Refusal } from '@/lib/server/commands/refusal'
import type { LateReason } from './late-entry'

export type SaveTarget = { repair: string; point: string; attempt: number }
/** A refusal of the server, or no answer from it: what was keyed then stays on the device. */
export type SaveRefusal = Refusal | { code: 'no-answer' } | { code: 'nothing-changed' }

type Saving = {
  target: SaveTarget
  record: PointRecord
  observedAt: Moment
  enteredAt: Moment
  late: LateReason | null
  replaces?: string
  was?: PointRecord
  reason?: string
}

/** Send one record, or the correction of one. The fact's id is made here, so that a repeated send records once. */
export async function saveRecord({
  target,
  record,
  observedAt,
  enteredAt,
  late,
  replaces,
  was,
  reason,
}: Saving): Promise<SaveRefusal | null> {
  const stream = `repair:${target.repair}`
  const entry = {
    id: v7(),
    observedAt,
    enteredAt,
    ...(late ? { late: { reason: late.reason.trim(), source: late.source } } : {}),
  }
  const changes = was ? changesBetween(was, record) : []
  if (was && changes.length === 0) return { code: 'nothing-changed' }
  try {
    const answer = replaces
      ? await correctRecordAction({
          stream,
          body: { target: replaces, changes, reason: (reason ?? '').trim() },
          ...entry,
        })
      : await recordPointAction({ stream, body: { point: target.point, attempt: target.attempt, record }, ...entry })
    return answer.ok ? null : answer.error
  } catch (cause) {
    if (
      cause instanceof TypeError ||
      (cause instanceof Error && /fetch|network|unexpected response/i.test(cause.message))
    )
      return { code: 'no-answer' }
    throw cause
  }
}
