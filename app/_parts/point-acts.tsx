import { nextAttemptGround } from '@/lib/domain/fold/next-attempt-ground'
import { mayAct } from '@/lib/domain/permissions'
import { signaturesAsked } from '@/lib/domain/signing/signatures-asked'
import { showMoment } from '@/lib/domain/time'
import type { PointView } from '@/lib/server/views/point-view'
import { AttemptPanel } from './attempt-panel'
import { BeforeRelease } from './before-release'
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
  const asked = signaturesAsked(point, attempt)
  const mayDecide = roles.some((role) => ['lead', 'inspector', 'client', 'engineer'].includes(role))
  return (
    <>
      {isLatest && (attempt.missing.length > 0 || attempt.records.length > 0) && attempt.state !== 'released' ? (
        <BeforeRelease attempt={attempt} />
      ) : null}
      {covers.length > 0 ? <SignPanel {...at} covers={covers} signers={signers} me={me} asked={asked} /> : null}
      {isLatest ? (
        <ReleasePanel
          {...at}
          heads={view.heads}
          signers={signers}
          me={me}
          isSubmitted={attempt.isSubmitted}
          verdict={attempt.verdict}
          awaiting={point.awaiting}
          maySubmit={view.mayRecord && attempt.records.length > 0}
          mayDecide={mayDecide}
        />
      ) : null}
      {standing.length > 0 && mayDecide ? (
        <WithdrawPanel
          stream={state.stream}
          releases={standing.map(({ fact }) => ({
            id: fact.id,
            label: `${fact.body.party}, ${showMoment(fact.observedAt)}`,
          }))}
        />
      ) : null}
      {isLatest && mayAct('open-attempt', roles) === 'may' ? (
        <AttemptPanel stream={state.stream} ground={nextAttemptGround(state, point, attempt.attempt)} />
      ) : null}
      {isLatest && attempt.records.length === 0 && mayAct('mark-not-applicable', roles) === 'may' ? (
        <NotApplicablePanel {...at} />
      ) : null}
    </>
  )
}
