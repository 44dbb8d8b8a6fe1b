'use client'
import { type FieldValues, useFieldArray, useWatch } from 'react-hook-form'
import { bodyOfValues } from '@/app/_desk/body-of-values'
import { DeskControl } from '@/app/_desk/desk-control'
import { DraftDock } from '@/app/_desk/draft-dock'
import { type RevisionDraftProps, useRevisionDraft } from '@/app/_desk/use-revision-draft'
import { savePlanDraftAction } from '@/app/(work)/actions/revision-actions'
import { cycleOfBlocks, Plan } from '@/lib/domain/plan'
import { InvalidationsEditor } from './invalidations-editor'
import { PointEditor } from './point-editor'

/** A plan's draft on screen: points, who takes part, what each records, shows and blocks, and what events make fall. */
export function PlanEditor(props: RevisionDraftProps) {
  const { form, submit, faults, state, refusal } = useRevisionDraft(props, Plan, cleanPlan, savePlanDraftAction)
  const { fields, append, remove } = useFieldArray({ control: form.control, name: 'points' })
  const values = useWatch({ control: form.control }) as FieldValues
  const parsed = Plan.safeParse(cleanPlan(values))
  const cycle = parsed.success ? cycleOfBlocks(parsed.data) : null
  const numbers = ((values.points ?? []) as { no?: string; title?: string }[]).flatMap((one) =>
    one.no ? [{ id: one.no, label: one.no }] : [],
  )
  return (
    <form className="form" noValidate onSubmit={submit}>
      <section className="sheet">
        <h2>Head</h2>
        <div className="fields">
          {props.stream ? null : (
            <DeskControl
              spec={{ kind: 'text', name: 'number', label: 'Number of the plan', hint: 'Permanent' }}
              control={form.control}
            />
          )}
          <DeskControl spec={{ kind: 'text', name: 'title', label: 'Title' }} control={form.control} />
        </div>
      </section>
      {cycle ? (
        <p className="note refused" role="alert">
          <strong>The blocks form a circle: {cycle.join(' → ')}.</strong>{' '}
          <span>No point of it could ever open. The draft may be saved so, and cannot be issued.</span>
        </p>
      ) : null}
      <section className="stack tight" aria-label="Points">
        <div className="row between">
          <h2>Points, {fields.length}</h2>
          <button type="button" className="button plain" onClick={() => append(blankPoint())}>
            Add a point
          </button>
        </div>
        <div>
          {fields.map((field, place) => (
            <PointEditor
              key={field.id}
              control={form.control}
              place={place}
              numbers={numbers}
              isFaulty={faults.some((fault) => fault.path.startsWith(`points ${place} `))}
              remove={() => remove(place)}
            />
          ))}
        </div>
      </section>
      <InvalidationsEditor control={form.control} numbers={numbers} />
      <DraftDock state={state} refusal={refusal} faults={faults} where={(path) => whereOf(path, values)} />
    </form>
  )
}

function blankPoint() {
  return {
    no: '',
    title: '',
    records: [],
    participation: { crew: null, inspector: null, client: null, engineer: null },
    signatures: [],
    blocks: [],
    photos: [],
    selfRelease: false,
    hazards: [],
  }
}

function cleanPlan(values: FieldValues): unknown {
  const body = (bodyOfValues(values) ?? {}) as Record<string, unknown>
  const points = ((body.points ?? []) as Record<string, unknown>[]).map((one) => ({
    records: [],
    signatures: [],
    blocks: [],
    photos: [],
    hazards: [],
    ...one,
  }))
  const falls = ((body.invalidations ?? []) as Record<string, unknown>[]).map((one) => ({
    falls: [],
    redo: '',
    ...one,
  }))
  return { ...body, points, invalidations: falls }
}

function whereOf(path: string, values: FieldValues): string {
  const match = /^points (\d+) ?(.*)$/.exec(path)
  if (!match) return path
  const one = (values as { points?: { no?: string; title?: string }[] }).points?.[Number(match[1])]
  return `point ${one?.no || Number(match[1]) + 1} ${one?.title ?? ''}${match[2] ? `, ${match[2]}` : ''}`
}
