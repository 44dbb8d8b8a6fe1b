import { ActForm } from '@/app/_desk/act-form'
import { BarredNote } from '@/app/_desk/barred-note'
import type { DeskField } from '@/app/_desk/desk-field'
import { mayAct, offsetOf, requireDesk } from '@/app/_desk/require-desk'
import { VerdictMark } from '@/app/_ui/verdict-mark'
import { showFinding } from '@/lib/domain/judge/show-finding'
import { loadNonconformanceList } from '@/lib/server/views/nonconformance-list-view'
import { loadRepairStates } from '@/lib/server/views/repair-list-view'
import { raiseNonconformanceAction } from '../../actions/nonconformance-actions'

export const metadata = { title: 'Raise a nonconformance' }

export default async function RaisePage({
  searchParams,
}: {
  searchParams: Promise<{ repair?: string; point?: string; attempt?: string }>
}) {
  const reading = await requireDesk()
  if (!mayAct(reading, 'raise nonconformance'))
    return <BarredNote title="Raise a nonconformance" forWhom="everyone but the administrator" />
  const search = await searchParams
  const states = await loadRepairStates(reading)
  const repair = states.find((state) => state.number === search.repair)
  const point = repair?.points.find((one) => one.no === search.point)
  const attempt = point?.attempts.find((one) => String(one.attempt) === search.attempt) ?? point?.current
  const failing = attempt?.criteria.filter((one) => one.verdict !== 'pass') ?? []
  const requirement = failing
    .filter((one) => one.verdict === 'fail')
    .map(
      (one) =>
        `${one.specification.slice('specification:'.length)} rev ${one.revision}, clause ${one.criterion.clause}: ${one.limit}`,
    )
    .join('; ')
  const { nextNumber } = await loadNonconformanceList(reading)
  const fields: DeskField[] = [
    {
      kind: 'text',
      name: 'number',
      label: 'Number',
      hint: 'The next free one is offered; a number is never used again',
    },
    { kind: 'text', name: 'title', label: 'In a few words' },
    { kind: 'remark', name: 'what', label: 'What is not as it should be, and where' },
    { kind: 'remark', name: 'requirement', label: 'What is required', hint: 'Clause and revision' },
    {
      kind: 'select',
      name: 'causeClass',
      label: 'Class of cause',
      options: ['unknown', 'method', 'material', 'person', 'instrument', 'weather', 'design', 'data'].map((one) => ({
        id: one,
        label: one,
      })),
    },
    ...(repair
      ? [
          {
            kind: 'several' as const,
            name: 'blocks',
            label: 'Points it blocks',
            hint: 'By their numbers in the plan. Acceptance is blocked while it is open, whatever is ticked.',
            options: repair.points.map((one) => ({ id: one.no, label: one.no })),
            optional: true as const,
          },
        ]
      : [
          {
            kind: 'select' as const,
            name: 'repair',
            label: 'Repair',
            options: states.map((state) => ({ id: state.stream, label: `${state.number}, ${state.opened.body.line}` })),
            optional: true as const,
          },
        ]),
  ]
  const settled = {
    linked: [],
    evidence: attempt?.records.map((one) => one.fact.id).slice(-60) ?? [],
    ...(repair ? { repair: repair.stream } : { blocks: [] }),
    ...(point && attempt ? { point: point.no, attempt: attempt.attempt } : {}),
  }
  return (
    <main className="page narrow stack" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">
            {repair
              ? `${repair.number}${point && attempt ? `, point ${point.no} ${point.plan.title}, attempt ${attempt.attempt}` : ''}`
              : 'Not at a point of a repair'}
          </p>
          <h1>Raise a nonconformance</h1>
        </div>
      </div>
      {failing.length > 0 ? (
        <section className="sheet">
          <h2>What was found there</h2>
          <ul className="plain-list">
            {failing.map((one) => (
              <li key={one.criterion.id}>
                <div className="row between">
                  <span>
                    {one.criterion.title}: {one.found} <span className="quiet">({one.limit})</span>
                  </span>
                  <VerdictMark verdict={one.verdict} />
                </div>
                {one.findings.slice(0, 6).map((finding) => (
                  <p key={`${finding.code}${finding.mark ?? ''}`} className="small">
                    {showFinding(finding)}
                  </p>
                ))}
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <ActForm
        action={raiseNonconformanceAction}
        kind="nonconformance-raised"
        stream={{ kind: 'nonconformance', from: 'number' }}
        fields={fields}
        settled={settled}
        utcOffset={offsetOf(reading)}
        initial={{
          number: nextNumber,
          ...(requirement ? { requirement: requirement.slice(0, 400) } : {}),
          ...(point ? { blocks: [point.no] } : {}),
        }}
        listsWhenAbsent={['blocks']}
        draftKey={`${reading.actor.tenant}|${reading.actor.person}|raise|${repair?.number ?? ''}|${point?.no ?? ''}|${attempt?.attempt ?? ''}`}
        submit="Raise it"
        done="Raised."
        goTo="/nonconformances/{name}"
      />
    </main>
  )
}
