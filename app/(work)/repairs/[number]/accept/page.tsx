import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { AcceptForm } from '@/app/_parts/accept-form'
import { AcceptSign } from '@/app/_parts/accept-sign'
import { AcceptanceStands } from '@/app/_parts/acceptance-stands'
import { AttemptMark } from '@/app/_ui/attempt-mark'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import { closingPoint, isClosingRecorded } from '@/lib/domain/fold/closing-point'
import { concessionsOf } from '@/lib/domain/fold/concessions'
import { loadPointView } from '@/lib/server/views/point-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadRepairView } from '@/lib/server/views/repair-view'

export const metadata = { title: 'Final acceptance' }

export default async function AcceptPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const number = decodeURIComponent((await params).number)
  const view = await loadRepairView(reading, number)
  if (!view) notFound()
  const { state, names } = view
  const point = closingPoint(state)
  const detail = point ? await loadPointView(reading, number, point.no, null) : null
  return (
    <main className="page" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(number)}`}>‹ {number}</Link>
          </p>
          <h1>Final acceptance</h1>
        </div>
      </div>
      <div className="two">
        <section className="sheet">
          <h2>Points of the plan</h2>
          <ul className="plain-list">
            {state.points
              .filter((one) => !point || one.no <= point.no)
              .map((one) => (
                <li key={one.no} className="row between">
                  <Link href={`/repairs/${encodeURIComponent(number)}/points/${one.no}`}>
                    {one.no} {one.plan.title}
                  </Link>
                  <span className="row">
                    {one.current.criteria.length > 0 && one.current.records.length > 0 ? (
                      <VerdictMark verdict={one.current.verdict} conceded={one.current.conceded !== null} />
                    ) : null}
                    <AttemptMark state={one.current.state} />
                  </span>
                </li>
              ))}
          </ul>
        </section>
        <div className="stack">
          {state.nonconformances
            .filter((one) => one.blocksAcceptance)
            .map((one) => (
              <p key={one.number} className="note refused">
                <strong>{one.number} blocks acceptance.</strong>
                <Link href={`/nonconformances/${one.number}`}>{one.state}</Link>
              </p>
            ))}
          {state.acceptance ? (
            <section className="sheet">
              <h2>Acceptance</h2>
              <AcceptanceStands acceptance={state.acceptance} names={names} />
              {detail ? (
                <AcceptSign
                  stream={state.stream}
                  point={detail.point.no}
                  attempt={detail.attempt.attempt}
                  acceptance={state.acceptance.fact.id}
                  signers={detail.signers}
                  me={view.me}
                />
              ) : null}
            </section>
          ) : !point || !isClosingRecorded(point) ? (
            <p className="note warn">
              <strong>The closing checklist is not recorded.</strong>
              {point ? (
                <Link href={`/repairs/${encodeURIComponent(number)}/points/${point.no}`}>
                  Record it at point {point.no}
                </Link>
              ) : (
                <span>The plan has no point for it.</span>
              )}
            </p>
          ) : detail && view.roles.includes('inspector') ? (
            <AcceptForm
              stream={state.stream}
              heads={detail.heads}
              signers={detail.signers}
              me={view.me}
              concessions={concessionsOf(state)}
              lifeFrom={state.specification?.body.lifeCountsFrom ?? 'acceptance'}
              persons={detail.signers.map((one) => ({ id: one.person, label: one.name }))}
            />
          ) : (
            <p className="note">An inspector accepts; client and engineer sign beside it.</p>
          )}
        </div>
      </div>
    </main>
  )
}
