import { v7 } from 'uuid'
import { FactId, type StreamId } from '@/lib/domain/facts/fact'
import { type FactJson, factJson } from '@/test/store/facts-for-tests'
import type { Names } from './prepared-names'

const repair = 'repair:R-1' as StreamId
const by = (person: string) => ({ observedBy: person, enteredBy: person })
const id = () => FactId.parse(v7())

/** One nonconformance in each state that an act follows. */
export function nonconformances(names: Names): FactJson[] {
  const time = (minute: number) => ({ observedAt: `2026-05-12T07:${String(minute).padStart(2, '0')}:00+01:00` })
  const in_ = (name: string) => `nonconformance:${name}`
  const raised = (name: string) =>
    factJson(
      in_(name),
      'nonconformance-raised',
      {
        number: name,
        title: 'Cold',
        what: 'Cold probe',
        requirement: '9.1',
        repair,
        linked: [],
        evidence: [],
        blocks: [],
        causeClass: 'weather',
      },
      { ...time(0), ...by('AU') },
    )
  const proposed = (name: string, fact: FactId) =>
    factJson(in_(name), 'disposition-proposed', { disposition: 'rework', what: 'again' }, { id: fact, ...time(3) })
  const toProposal = (name: string, fact: FactId) => [
    raised(name),
    factJson(in_(name), 'contained', { action: 'held' }, time(1)),
    factJson(in_(name), 'assessed', { finding: 'cold' }, time(2)),
    proposed(name, fact),
  ]
  const toApproval = (name: string) => {
    const fact = id()
    return [
      ...toProposal(name, fact),
      factJson(in_(name), 'disposition-approved', { proposal: fact, party: 'inspector' }, time(4)),
    ]
  }
  const toStart = (name: string) => [
    ...toApproval(name),
    factJson(in_(name), 'action-started', { what: 'again' }, { ...time(5), ...by('T1') }),
  ]
  const toVerified = (name: string) => [
    ...toStart(name),
    factJson(in_(name), 'action-done', { what: 'again' }, { ...time(6), ...by('T1') }),
    factJson(in_(name), 'verified', { how: 'seen', evidence: [] }, time(7)),
  ]
  return [
    raised('N-raised'),
    raised('N-void'),
    raised('N-reject'),
    raised('N-contain'),
    ...toProposal('N-proposed', names.proposal),
    ...toProposal('N-turned', id()),
    ...toApproval('N-approved'),
    ...toStart('N-started'),
    ...toStart('N-done'),
    ...toVerified('N-verified'),
    ...toVerified('N-reopen'),
    raised('N-assessed'),
    factJson(in_('N-assessed'), 'contained', { action: 'held' }, time(1)),
    factJson(in_('N-assessed'), 'assessed', { finding: 'cold' }, time(2)),
    raised('N-action'),
    factJson(
      in_('N-action'),
      'corrective-action',
      { what: 'second probe', owner: 'E', dueOn: '2026-05-29' },
      { id: names.action, ...time(1) },
    ),
  ]
}
