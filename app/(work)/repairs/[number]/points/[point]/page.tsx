import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { AttemptHistory } from '@/app/_parts/attempt-history'
import { AttemptPlots } from '@/app/_parts/attempt-plots'
import { ClimatePanel } from '@/app/_parts/climate-panel'
import { CriteriaTable } from '@/app/_parts/criteria-table'
import { GovernsChoice } from '@/app/_parts/governs-choice'
import { PhotoList } from '@/app/_parts/photo-list'
import { PhotoUpload } from '@/app/_parts/photo-upload'
import { PointActs } from '@/app/_parts/point-acts'
import { PointHead } from '@/app/_parts/point-head'
import { RecordList } from '@/app/_parts/record-list'
import { SurfaceMap } from '@/app/_parts/repair-maps'
import { TallyWays } from '@/app/_tally/tally-ways'
import { FORMS } from '@/lib/capture/forms/form-table'
import { surfaceMapsOf } from '@/lib/domain/pictures/surface-map-of'
import { instantOf } from '@/lib/domain/time'
import { loadPointView } from '@/lib/server/views/point-view'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadWorkingInstruments } from '@/lib/server/views/working-instruments'

type Props = { params: Promise<{ number: string; point: string }>; searchParams: Promise<{ attempt?: string }> }

export async function generateMetadata({ params }: Props) {
  const { number, point } = await params
  return { title: `${decodeURIComponent(number)} point ${point}` }
}

export default async function PointPage({ params, searchParams }: Props) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const { number, point: no } = await params
  const asked = (await searchParams).attempt
  const view = await loadPointView(reading, decodeURIComponent(number), no, asked ? Number(asked) : null)
  if (!view) notFound()
  const { state, point, attempt, names } = view
  const base = `/repairs/${encodeURIComponent(state.number)}/points/${no}`
  const isLatest = attempt === point.current
  return (
    <main className="page" id="main">
      <PointHead view={view} base={base} />
      <div className="two">
        <div className="stack">
          {isLatest && view.mayRecord ? (
            <section className="sheet">
              <h2>Record</h2>
              <div className="row">
                {point.plan.records.map(({ type, atLeast }) => (
                  <Link key={type} className="button" href={`${base}/record/${type}?attempt=${attempt.attempt}`}>
                    {FORMS[type].title}
                    {atLeast > 0
                      ? ` (${attempt.records.filter((one) => one.record.type === type).length} of ${atLeast})`
                      : ''}
                  </Link>
                ))}
                {(['weep', 'stop', 'remark'] as const)
                  .filter((type) => !point.plan.records.some((one) => one.type === type))
                  .map((type) => (
                    <Link
                      key={type}
                      className={`button ${type === 'remark' ? 'plain' : 'stop'}`}
                      href={`${base}/record/${type}?attempt=${attempt.attempt}`}
                    >
                      {FORMS[type].title}
                    </Link>
                  ))}
              </div>
              <TallyWays base={base} attempt={attempt.attempt} />
            </section>
          ) : null}
          <GovernsChoice view={view} />
          <section className="sheet">
            <h2>Against the specification</h2>
            <CriteriaTable ground={{ state, attempt, instruments: await loadWorkingInstruments(reading, attempt) }} />
          </section>
          <ClimatePanel state={state} attempt={attempt} nowMs={instantOf(reading.desk.now(null))} />
          <AttemptPlots state={state} attempt={attempt} />
          {surfaceMapsOf(state, attempt).map((map) => (
            <section key={map.fact} className="sheet">
              <div className="sheet-head">
                <h2>{map.title}</h2>
                <span className="quiet">{map.limit}</span>
              </div>
              <SurfaceMap map={map} href={`#${map.fact}`} />
            </section>
          ))}
          <section className="sheet">
            <h2>As recorded</h2>
            <RecordList
              attempt={attempt}
              names={names}
              me={view.me}
              check={(fact) => (
                <Link className="button plain" href={`${base}/check/${fact}`}>
                  Compare with the paper
                </Link>
              )}
              correct={(fact) => (
                <Link className="button plain" href={`${base}/correct/${fact}`}>
                  Correct an error in it
                </Link>
              )}
            />
          </section>
        </div>
        <div className="stack">
          <PointActs view={view} />
          <section className="sheet">
            <div className="sheet-head">
              <h2>Photos</h2>
              <span className="quiet">{attempt.photos.length}</span>
            </div>
            {isLatest && view.mayAttach ? (
              <PhotoUpload
                repair={state.number}
                point={no}
                attempt={attempt.attempt}
                demands={point.plan.photos.map((demand) => ({
                  id: demand.id,
                  show: demand.show,
                  atLeast: demand.atLeast,
                  present: attempt.photos.filter(
                    (one) => one.fact.body.demand === demand.id && one.judged?.body.decision !== 'not accepted',
                  ).length,
                }))}
                isRestricted={view.isSparkRestricted}
                clockKind={view.clockKind}
                utcOffset={view.utcOffset}
              />
            ) : null}
            <PhotoList
              attempt={attempt}
              names={names}
              repair={state.number}
              mayJudge={view.roles.includes('inspector')}
            />
          </section>
          <AttemptHistory view={view} />
        </div>
      </div>
    </main>
  )
}
