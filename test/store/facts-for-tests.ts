import { v7 } from 'uuid'
import type { BodyOf, FactKind } from '@/lib/domain/facts/fact-kinds'
import type { Moment } from '@/lib/domain/time'

export type FactJson = {
  v: 1
  id: string
  stream: string
  kind: string
  observedAt: Moment
  observedBy: string
  enteredAt: Moment
  enteredBy: string
  device: { id: string; clockOffsetMs: number | null }
  body: unknown
}

/** A fact as a device sends it. */
export function factJson<K extends FactKind>(
  stream: string,
  kind: K,
  body: BodyOf<K>,
  more: Partial<FactJson> = {},
): FactJson {
  const at = more.observedAt ?? '2026-05-12T09:00:00+01:00'
  return {
    v: 1,
    id: v7(),
    stream,
    kind,
    observedAt: at,
    observedBy: 'QI',
    enteredAt: at,
    enteredBy: 'QI',
    device: { id: 'tab-1', clockOffsetMs: null },
    body,
    ...more,
  }
}

/** A remark in a project's stream: the smallest fact. */
export function remark(text: string, stream = 'project:P-1', more: Partial<FactJson> = {}): FactJson {
  return factJson(stream, 'remark', { text }, more)
}
