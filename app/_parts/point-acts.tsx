import type { PointView } from '@/lib/server/views/point-view'
import { AttemptPanel } from './attempt-panel'
import { NotApplicablePanel } from './not-applicable-panel'
import { ReleasePanel } from './release-panel'
import { SignPanel } from './sign-panel'
import { WithdrawPanel } from './withdraw-panel'

/** What may be done at a point now: sign, submit, release, refuse, withdraw, open a new attempt. The server decides; this only offers. */
export function PointActs({ view }: { view: PointView }) {
  const { state, point, attempt, signers, me, roles } = view
  const isLatest = attempt === point.current
  const at = { stream: state.stream, point: point.no, attempt: attempt.attempt }
  const covers = attempt.records
    .flatMap(({ fact, corrections }) => [fact.id, ...corrections.map((one) => one.id)])
    .concat(attempt.photos.map((one) => one.fact.id))
  const standing = attempt.releases.filter((one) => ['valid', 'used', 'in question'].includes(one.state))
  const asked = point.plan.signatures.filter(
    (one) =>
      !attempt.signatures.some(
        (sign) => sign.state === 'stands' && sign.fact.body.meaning === one.meaning && sign.fact.body.role === one.role,
      ),
  )
  const mayDecide = roles.some((role) => ['lead', 'inspector', 'client', 'engineer'].includes(role))
  return (
    <>
      {isLatest && (attempt.missing.length > 0 || attempt.records.length > 0) && attempt.state !== 'released' ? (
        <section className="sheet">
          <h2>Before release</h2>
          {attempt.missing.length === 0 ? (
            <p className="pass">Nothing is missing.</p>
          ) : (
            <ul className="plain-list">
              {attempt.missing.map((line) => (
                <li key={line}>{line}</li>
              ))}
            </ul>
          )}
        </section>
      ) : null}
      {covers.length > 0 ? <SignPanel {...at} covers={covers} signers={signers} me={me} asked={asked} /> : null}
      {isLatest ? (
        <ReleasePanel
          {...at}
          heads={view.heads}
          signers={signers}
          me={me}
          isSubmitted={attempt.submitted !== null && !attempt.missing.some((line) => line.startsWith('Changed since'))}
          verdict={attempt.verdict}
          awaiting={point.awaiting}
          maySubmit={view.mayRecord && attempt.records.length > 0}
          mayDecide={mayDecide}
        />
      ) : null}
      {standing.length > 0 && mayDecide ? (
        <WithdrawPanel
          stream={state.stream}
          releases={standing.map((one) => ({
            id: one.fact.id,
            label: `${one.fact.body.party}, ${one.fact.observedAt.slice(0, 16).replace('T', ' ')}`,
          }))}
        />
      ) : null}
      {isLatest && roles.some((role) => role === 'inspector' || role === 'lead') ? (
        <AttemptPanel
          stream={state.stream}
          point={point.no}
          attempt={attempt.attempt + 1}
          others={state.points
            .filter((one) => one.no >= point.no && one.current.records.length > 0)
            .map((one) => ({ no: one.no, title: one.plan.title, attempt: one.current.attempt }))}
          nonconformances={state.nonconformances
            .filter((one) => one.isOpen)
            .map((one) => ({ stream: one.stream, number: one.number }))}
        />
      ) : null}
      {isLatest && attempt.records.length === 0 && roles.some((role) => role === 'inspector' || role === 'engineer') ? (
        <NotApplicablePanel {...at} />
      ) : null}
    </>
  )
}
