import Link from 'next/link'
import { Glyph } from '@/app/_ui/glyph'
import type { ComparedRow } from '@/lib/domain/design/compare-design'
import type { DesignFigure } from '@/lib/domain/design/design-figure'
import type { EnvelopeRow } from '@/lib/domain/design/envelope-rows'
import { inputsBySource } from '@/lib/domain/design/source-words'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { RecordOf } from '@/lib/domain/records/record'
import { GridTable } from './grid-table'

type Sign = { glyph: 'pass' | 'fail' | 'not proven'; className: string; word: string }

const COMPARED: Record<ComparedRow['outcome'], Sign> = {
  'not less': { glyph: 'pass', className: 'pass', word: 'not less' },
  'not more': { glyph: 'pass', className: 'pass', word: 'not more' },
  less: { glyph: 'fail', className: 'fail', word: 'less' },
  more: { glyph: 'fail', className: 'fail', word: 'more' },
  'not computed': { glyph: 'not proven', className: 'not-proven', word: 'not computed' },
}
const ENVELOPE: Record<EnvelopeRow['outcome'], Sign> = {
  within: { glyph: 'pass', className: 'pass', word: 'within' },
  outside: { glyph: 'fail', className: 'fail', word: 'outside' },
  'not proven': { glyph: 'not proven', className: 'not-proven', word: 'not proven' },
  'not judged': { glyph: 'not proven', className: 'not-proven', word: 'not judged' },
}

function Mark({ sign }: { sign: Sign }) {
  return (
    <span className={`mark ${sign.className}`}>
      <Glyph name={sign.glyph} />
      {sign.word}
    </span>
  )
}

/** What the design sheet states against what was computed. */
export function ComparedTable({ rows }: { rows: readonly ComparedRow[] }) {
  return (
    <table className="cards tight-table">
      <thead>
        <tr>
          <th>What</th>
          <th>Computed or asked</th>
          <th>As recorded</th>
          <th>Recorded is</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.what}>
            <th scope="row">{row.what}</th>
            <td data-label="Computed">{row.needed}</td>
            <td data-label="As recorded">{row.recorded}</td>
            <td data-label="Recorded is">
              <Mark sign={COMPARED[row.outcome]} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** As found against what the design holds for. */
export function EnvelopeTable({ rows }: { rows: readonly EnvelopeRow[] }) {
  return (
    <table className="cards tight-table">
      <thead>
        <tr>
          <th>What</th>
          <th>As found</th>
          <th>The design holds for</th>
          <th>As found is</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.what}>
            <th scope="row">{row.what}</th>
            <td data-label="As found">{row.found}</td>
            <td data-label="The design holds for">{row.limit}</td>
            <td data-label="As found is">
              <Mark sign={ENVELOPE[row.outcome]} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Every figure that goes into an equation, under the record or clause that it comes from. */
export function InputTable({
  inputs,
  names,
  number,
}: {
  inputs: readonly (DesignFigure & { key: string })[]
  names: Record<PersonId, string>
  number: string
}) {
  return inputsBySource(inputs, (person) => names[person] ?? person).map((group) => (
    <table key={group.words} className="tight-table input-table">
      <caption>
        {group.from?.kind === 'record' ? (
          <Link href={`/repairs/${encodeURIComponent(number)}/points/${group.from.point}`}>{group.words}</Link>
        ) : (
          group.words
        )}
      </caption>
      <tbody>
        {group.inputs.map((one) => (
          <tr key={one.key}>
            <th scope="row">{one.symbol}</th>
            <td>
              {one.label}
              {one.note ? <span className="quiet small">, {one.note}</span> : null}
              {one.from?.kind === 'specification' ? (
                <span className="quiet small">
                  , clause {one.from.clause}, rev {one.from.revision}
                </span>
              ) : null}
            </td>
            <td className={`num ${one.value === null ? 'not-proven' : ''}`}>{one.shown ?? 'missing'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  ))
}

/** The wall as read, station against clock position. */
export function WallTable({ defect }: { defect: RecordOf<'defect'> }) {
  return <GridTable grid={defect.grid} readings={defect.wall} className="tight-table" />
}
