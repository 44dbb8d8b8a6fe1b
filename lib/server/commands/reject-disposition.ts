import { foldNonconformance } from '@/lib/domain/fold/fold-nonconformance'
import { nonconformanceAct } from './nonconformance-act'

/** Reject the proposed disposition, with the reason. Refuses `not-found` for another proposal than the latest, and as `nonconformanceAct`. */
export const rejectDisposition = nonconformanceAct(
  'disposition-rejected',
  () => ({ kind: 'disposition-rejected' }),
  async (desk, { facts, stream, place }, { body }) => {
    const state = foldNonconformance(facts, stream, desk.now(place.offset))
    return state?.proposal?.id === body.proposal ? null : { code: 'not-found' }
  },
)
