import { type FactId, type PersonId, PersonId as PersonIdSchema, type Receipt, StreamId } from '@/lib/domain/facts/fact'
import { type Fact, type FactKind, type FactOf, parseFact } from '@/lib/domain/facts/fact-kinds'

export const person = (name: string): PersonId => PersonIdSchema.parse(name)
export const stream = (id: string): StreamId => StreamId.parse(id)

/** `05-12 09:04` in 2026 at +01:00; seconds may follow. */
export function at(text: string): string {
  const [day, clock = '00:00'] = text.split(' ')
  return `2026-${day}T${clock.length === 5 ? `${clock}:00` : clock}+01:00`
}

type Extra = {
  by?: string
  enteredBy?: string
  device?: string
  enteredAt?: string
  late?: Fact['late']
  offsetMs?: number | null
}

/** Makes facts with ids in order; every one passes the same parser as facts from outside. */
export function factMaker() {
  let count = 0
  const facts: Fact[] = []
  const make = <K extends FactKind>(of: string, kind: K, when: string, body: unknown, extra: Extra = {}): FactOf<K> => {
    count += 1
    const observedAt = at(when)
    const { by = 'tobias', device = 'tablet-q', enteredAt, late, offsetMs = 0 } = extra
    const parsed = parseFact({
      v: 1,
      id: `01970000-0000-7000-8000-${String(count).padStart(12, '0')}`,
      stream: of,
      kind,
      observedAt,
      observedBy: by,
      enteredAt: enteredAt ? at(enteredAt) : observedAt,
      enteredBy: extra.enteredBy ?? by,
      ...(late && { late }),
      device: { id: device, clockOffsetMs: offsetMs },
      body,
    })
    if (!parsed.ok) throw new Error(`${kind}: ${JSON.stringify(parsed.error)}`)
    facts.push(parsed.value)
    return parsed.value as FactOf<K>
  }
  return { facts, make }
}

/** A receipt at a moment. */
export function receipt(receivedAt: string, position = 0): Receipt {
  return { receivedAt: at(receivedAt), receivedBy: person('tobias'), position }
}

const HASH = 'a'.repeat(64)
/** Covers of a signature over facts, with a digest that nobody checks here. */
export function covers(...ids: FactId[]): { fact: FactId; sha256: string }[] {
  return ids.map((fact) => ({ fact, sha256: HASH }))
}
