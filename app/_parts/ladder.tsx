import { AttemptMark } from '@/app/_ui/attempt-mark'
import { Letters } from '@/app/_ui/letters'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { AttemptState, PointState, WindowState } from '@/lib/domain/fold/repair-state'
import { dayOf, showClock } from '@/lib/domain/time'
import { WindowLine } from './window-line'

/** The plan's points in order: who takes part, each attempt with its verdict and release, and windows that run. */
export function Ladder({
  number,
  points,
  windows,
  names,
  nowMs,
  hrefOf = (point, attempt) => `/repairs/${number}/points/${point}?attempt=${attempt}`,
}: {
  number: string
  points: readonly PointState[]
  windows: readonly WindowState[]
  names: Record<PersonId, string>
  nowMs: number
  /** Where an attempt opens; on the pages of the record unless said. */
  hrefOf?: (point: string, attempt: number) => string
}) {
  return (
    <ol className="ladder" aria-label="Points of the plan">
      {points.map((point) => (
        <li key={point.no}>
          {point.attempts.map((attempt) => (
            <Rung
              key={attempt.attempt}
              href={hrefOf(point.no, attempt.attempt)}
              point={point}
              attempt={attempt}
              names={names}
            />
          ))}
          {windows
            .filter((window) => window.point === point.no && (window.state === 'running' || window.state === 'warning'))
            .map((window) => (
              <WindowLine key={window.criterion} window={window} nowMs={nowMs} />
            ))}
        </li>
      ))}
    </ol>
  )
}

function Rung({
  href,
  point,
  attempt,
  names,
}: {
  href: string
  point: PointState
  attempt: AttemptState
  names: Record<PersonId, string>
}) {
  const release = attempt.releases.at(-1)
  const isFirst = point.attempts[0] === attempt
  const isJudged = attempt.records.length > 0 && attempt.criteria.length > 0
  return (
    <a className="rung" data-state={attempt.state} href={href}>
      <span className="no">{point.no}</span>
      <span>
        <span className="title">{point.plan.title}</span>
        <br />
        <span className="what">
          {point.attempts.length > 1 ? `attempt ${attempt.attempt} · ` : ''}
          {whatOf(point, attempt)}
        </span>
      </span>
      {isFirst ? <Letters participation={point.participation} /> : <span />}
      <span className="outcome">
        {isJudged ? <VerdictMark verdict={attempt.verdict} conceded={attempt.conceded !== null} /> : null}
        {attempt.state === 'released' && isJudged ? null : <AttemptMark state={attempt.state} />}
        {release ? <small>{releaseWords(release, names)}</small> : null}
      </span>
    </a>
  )
}

function whatOf(point: PointState, attempt: AttemptState): string {
  if (attempt.state === 'closed') return `waits for ${point.blockedBy.join(', ')}`
  const figure = attempt.criteria.find((one) => one.figures.mean !== undefined || one.figures.worst !== undefined)
  const failed = attempt.criteria.find((one) => one.verdict === 'fail')
  if (failed) return `${failed.criterion.title}: ${failed.found}`
  if (figure) return `${figure.criterion.title}: ${figure.found}`
  if (attempt.records.length > 0)
    return `${attempt.records.length} ${attempt.records.length === 1 ? 'entry' : 'entries'}`
  return point.awaiting.length > 0 ? `hold for ${point.awaiting.join(', ')}` : 'nothing recorded yet'
}

function releaseWords(release: AttemptState['releases'][number], names: Record<PersonId, string>): string {
  const who = names[release.fact.observedBy] ?? release.fact.observedBy
  const scope = release.fact.body.scope
  const part = scope.kind === 'whole' ? '' : scope.kind === 'area' ? `, ${scope.area} only` : `, up to ${scope.step}`
  const made = `${dayOf(release.fact.observedAt).slice(5)} ${showClock(release.fact.observedAt)} ${who.split(' ').at(-1)}${part}`
  return release.fell ? `${made}, then ${release.state} at ${showClock(release.fell.at)}` : made
}
