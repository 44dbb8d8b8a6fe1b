import type { FactId, PersonId } from '../facts/fact'
import type { InvalidatingEvent } from '../plan'
import type { PointNo } from '../specification'
import type { Moment } from '../time'

/** Something that makes releases of one point fall, whatever the release. `timed` falls come from a clock running out. */
export type Fall = {
  no: PointNo
  at: Moment
  cause: string
  effect: 'lapsed' | 'in question'
  event: InvalidatingEvent | null
  timed: boolean
  area: string | null
  by: PersonId | null
  fact: FactId | null
}
