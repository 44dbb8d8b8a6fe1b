import Link from 'next/link'
import type { ReactNode } from 'react'
import { AttemptMark } from '@/app/_ui/attempt-mark'
import { Glyph } from '@/app/_ui/glyph'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import { showMoment } from '@/lib/domain/time'
import type { TraceUseLine } from '@/lib/server/views/trace-use-line'

const AS = { batch: 'Used as', instrument: 'Read for', person: 'Did' } as const

/** Uses, one a row: repair, attempt, into what, how much, and how that attempt stands now. */
export function UseTable<L extends TraceUseLine>({
  uses,
  label,
  as,
  columns,
}: {
  uses: readonly L[]
  label: string
  as: 'batch' | 'instrument' | 'person'
  columns?: readonly { head: string; cell: (line: L) => ReactNode }[]
}) {
  return (
    <div className="scroll-x">
      <table className="cards tight-table" aria-label={label}>
        <thead>
          <tr>
            <th>Repair</th>
            <th>Point, attempt</th>
            <th>{AS[as]}</th>
            <th>When</th>
            {as === 'batch' ? <th className="num">Amount</th> : null}
            {columns?.map((one) => (
              <th key={one.head}>{one.head}</th>
            ))}
            <th>Stands</th>
          </tr>
        </thead>
        <tbody>
          {uses.map((use, place) => (
            // One record may use the same thing twice in one role: the place in the list tells the rows apart.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            <tr key={`${use.fact}${place}`}>
              <th scope="row" className="nowrap">
                <Link href={`/repairs/${use.number}`}>{use.number}</Link>
              </th>
              <td>
                <Link href={`/repairs/${use.number}/points/${use.point}?attempt=${use.attempt}`}>
                  {use.point} {use.pointTitle}
                </Link>
                , attempt {use.attempt}
              </td>
              <td data-label={AS[as]}>
                {use.role}
                {use.into ? `, ${use.into}` : ''}
                {use.isOverruled ? <span className="quiet small"> (another record governs)</span> : null}
              </td>
              <td data-label="When" className="nowrap">
                {showMoment(use.at)}
              </td>
              {as === 'batch' ? (
                <td data-label="Amount" className="num">
                  {use.amount ?? (use.role === 'refused' || use.role.startsWith('taken') ? 'none' : 'not weighed')}
                </td>
              ) : null}
              {columns?.map((one) => (
                <td key={one.head} data-label={one.head}>
                  {one.cell(use)}
                </td>
              ))}
              <td data-label="Stands">
                {use.isInQuestion ? (
                  <span className="mark question">
                    <Glyph name="question" />
                    In question
                  </span>
                ) : use.verdict ? (
                  <VerdictMark verdict={use.verdict} />
                ) : use.state ? (
                  <AttemptMark state={use.state} />
                ) : (
                  'not known'
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Uses in repairs that the reader may not read are counted, never shown. */
export function HiddenUses({ count }: { count: number }) {
  return count === 0 ? null : (
    <p className="note">
      <strong>
        {count} more {count === 1 ? 'use' : 'uses'}
      </strong>{' '}
      <span>in projects where you hold no role. They are in the balance and not listed here.</span>
    </p>
  )
}
