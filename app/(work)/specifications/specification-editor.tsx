'use client'
import { type FieldValues, useFieldArray } from 'react-hook-form'
import { bodyOfValues } from '@/app/_desk/body-of-values'
import { DeskControl } from '@/app/_desk/desk-control'
import type { DeskField } from '@/app/_desk/desk-field'
import { DraftDock } from '@/app/_desk/draft-dock'
import { RULE_LISTS } from '@/app/_desk/rule-fields'
import { type RevisionDraftProps, useRevisionDraft } from '@/app/_desk/use-revision-draft'
import { saveSpecificationDraftAction } from '@/app/(work)/actions/revision-actions'
import { type RuleKind, Specification } from '@/lib/domain/specification'
import { CriterionEditor } from './criterion-editor'

const HEAD: readonly DeskField[] = [
  { kind: 'text', name: 'title', label: 'Title' },
  { kind: 'choice', name: 'wrap', label: 'Wrap', options: ['wet lay-up', 'water-activated tape'] },
  { kind: 'lines', name: 'arrest', label: 'Leak arrest allowed' },
  { kind: 'choice', name: 'decisionRule', label: 'Decision rule', options: ['simple acceptance', 'guard band'] },
  { kind: 'text', name: 'dewPointFormula', label: 'Dew point formula, as printed' },
  { kind: 'decimal', name: 'noticeHours', label: 'Notice to witnesses, hours' },
  { kind: 'decimal', name: 'witnessWaitMinutes', label: 'Wait for a witness, minutes' },
  { kind: 'choice', name: 'lifeCountsFrom', label: 'Life counts from', options: ['acceptance', 'application'] },
  { kind: 'whole', name: 'extendedCuresAllowed', label: 'Extended cures allowed' },
  { kind: 'choice', name: 'tapRule', label: 'Several taps at a mark give', options: ['mean', 'median'] },
  { kind: 'lines', name: 'notes', label: 'Notes', optional: true },
]

/** A specification's draft on screen: every limit, count, window and table is a field here, and nowhere in code. */
export function SpecificationEditor(props: RevisionDraftProps) {
  const { form, submit, faults, state, refusal } = useRevisionDraft(
    props,
    Specification,
    cleanSpecification,
    saveSpecificationDraftAction,
  )
  const { fields, append, remove } = useFieldArray({ control: form.control, name: 'criteria' })
  const points = [...new Set(fields.map((_, place) => String(form.getValues(`criteria.${place}.point`) ?? '')))].sort()
  return (
    <form className="form" noValidate onSubmit={submit}>
      <section className="sheet">
        <h2>Head</h2>
        <div className="fields">
          {props.stream ? null : (
            <DeskControl
              spec={{ kind: 'text', name: 'number', label: 'Number of the specification', hint: 'Permanent' }}
              control={form.control}
            />
          )}
          {HEAD.map((spec) => (
            <DeskControl key={spec.name} spec={spec} control={form.control} />
          ))}
        </div>
      </section>
      <section className="stack tight" aria-label="Criteria">
        <div className="row between">
          <h2>Criteria, {fields.length}</h2>
          <button
            type="button"
            className="button plain"
            onClick={() => append({ id: '', point: '', clause: '', title: '', rule: {} })}
          >
            Add a criterion
          </button>
        </div>
        {points.map((point) => (
          <div key={point}>
            <h3 className="point-head">{point === '' ? 'New' : `Point ${point}`}</h3>
            {fields.map((field, place) =>
              String(form.getValues(`criteria.${place}.point`) ?? '') === point ? (
                <CriterionEditor
                  key={field.id}
                  control={form.control}
                  place={place}
                  isFaulty={faults.some((fault) => fault.path.startsWith(`criteria ${place} `))}
                  remove={() => remove(place)}
                />
              ) : null,
            )}
          </div>
        ))}
      </section>
      <DraftDock state={state} refusal={refusal} faults={faults} where={(path) => whereOf(path, form.getValues())} />
    </form>
  )
}

function cleanSpecification(values: FieldValues): unknown {
  const body = bodyOfValues(values) as {
    criteria?: { rule?: { kind?: RuleKind } & Record<string, unknown> }[]
  } & Record<string, unknown>
  const criteria = (body.criteria ?? []).map((one) => {
    const list = one.rule?.kind ? RULE_LISTS[one.rule.kind] : undefined
    return list && one.rule ? { ...one, rule: { ...one.rule, [list]: one.rule[list] ?? [] } } : one
  })
  return { ...body, criteria, notes: body.notes ?? [] }
}

function whereOf(path: string, values: FieldValues): string {
  const match = /^criteria (\d+) ?(.*)$/.exec(path)
  if (!match) return HEAD.find((one) => path.startsWith(one.name))?.label ?? path
  const one = (values as { criteria?: { title?: string; point?: string }[] }).criteria?.[Number(match[1])]
  return `${one?.point ? `point ${one.point}, ` : ''}${one?.title || `criterion ${Number(match[1]) + 1}`}${match[2] ? `, ${match[2]}` : ''}`
}
