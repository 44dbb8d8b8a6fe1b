import type { PersonId } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { factPlace, factWords, kindWords } from '@/lib/domain/facts/fact-words'
import { LATE_AFTER_MINUTES } from '@/lib/domain/facts/late-after'
import { isLate } from '@/lib/domain/fold/effective-records'
import type { Moment } from '@/lib/domain/time'
import { parseRow } from '@/lib/server/store/load-stream'
import type { TrailRow } from '@/lib/server/store/search-trail'

/** One fact of the trail as a line. `isBroken`: the stored bytes do not give the digest, or are no fact. */
export type TrailLineOfAudit = {
  leaf: number
  id: string
  stream: string
  position: number
  kind: string
  what: string
  where: string
  observedAt: Moment | null
  enteredAt: Moment | null
  receivedAt: string
  observedBy: string | null
  enteredBy: string | null
  receivedBy: string
  device: string | null
  clockOffsetMs: number | null
  late: string | null
  sha256: string
  isBroken: boolean
}

/** The fact of a stored row, or null when the bytes do not give the digest or say no fact of the row's stream. */
export function factOfRow(row: TrailRow): Fact | null {
  try {
    return parseRow(row).fact
  } catch {
    return null
  }
}

/** A stored fact as a line, with persons by name. */
export function trailLineOf(row: TrailRow, names: Readonly<Record<PersonId, string>>): TrailLineOfAudit {
  const fact = factOfRow(row)
  const name = (person: string) => names[person as PersonId] ?? person
  return {
    leaf: row.leaf,
    id: row.id,
    stream: row.stream,
    position: row.position,
    kind: row.kind,
    what: fact ? factWords(fact) : kindWords(row.kind),
    where: fact ? factPlace(fact) : row.stream.replace(':', ' '),
    observedAt: fact?.observedAt ?? null,
    enteredAt: fact?.enteredAt ?? null,
    receivedAt: row.receivedAt,
    observedBy: fact ? name(fact.observedBy) : null,
    enteredBy: fact ? name(fact.enteredBy) : null,
    receivedBy: name(row.receivedBy),
    device: fact?.device.id ?? null,
    clockOffsetMs: fact?.device.clockOffsetMs ?? null,
    late: fact ? lateWords(fact) : null,
    sha256: row.sha256,
    isBroken: fact === null,
  }
}

/** Why an entry is late, from what; or that nobody said why. Null when it is not late. */
export function lateWords(fact: Fact): string | null {
  if (!isLate(fact, LATE_AFTER_MINUTES)) return null
  return fact.late ? `${fact.late.reason} (from ${fact.late.source})` : 'no reason given'
}
