'use client'
import { useState } from 'react'
import { type Control, type FieldValues, useController, useWatch } from 'react-hook-form'
import { bodyOfValues } from '@/app/_desk/body-of-values'
import { DeskControl } from '@/app/_desk/desk-control'
import { RULE_FIELDS, RULE_WORDS } from '@/app/_desk/rule-fields'
import { showLimit } from '@/lib/domain/judge/show-limit'
import { Criterion, type RuleKind } from '@/lib/domain/specification'

const KINDS = (Object.keys(RULE_WORDS) as RuleKind[]).map((kind) => ({ id: kind, label: RULE_WORDS[kind] }))

/** One criterion of a draft: a line with its limit in words; opened, its clause, title and rule. */
export function CriterionEditor({
  control,
  place,
  isFaulty,
  remove,
}: {
  control: Control<FieldValues>
  place: number
  isFaulty: boolean
  remove: () => void
}) {
  const under = `criteria.${place}`
  const value = useWatch({ control, name: under }) as
    | { id?: string; clause?: string; title?: string; rule?: { kind?: RuleKind } }
    | undefined
  const [isOpen, setOpen] = useState(value?.title === '')
  const kind = value?.rule?.kind
  const parsed = Criterion.safeParse(bodyOfValues(value))
  return (
    <details className="act" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span>
          {value?.clause || '…'} {value?.title || 'New criterion'}
        </span>
        <span className={`small ${isFaulty ? 'fail' : 'quiet'}`}>
          {parsed.success
            ? showLimit(parsed.data, { design: null, defect: null }).replaceAll(' (no design sheet)', '')
            : 'not complete'}
        </span>
      </summary>
      {isOpen ? (
        <div className="act-body">
          <div className="fields">
            <DeskControl control={control} under={under} spec={{ kind: 'text', name: 'clause', label: 'Clause' }} />
            <DeskControl control={control} under={under} spec={{ kind: 'text', name: 'title', label: 'Title' }} />
            <DeskControl
              control={control}
              under={under}
              spec={{ kind: 'text', name: 'point', label: 'Point', hint: 'Two digits, such as 16' }}
            />
            <DeskControl
              control={control}
              under={under}
              spec={{ kind: 'text', name: 'id', label: 'Short name, permanent', hint: 'Such as 16.each' }}
            />
            <KindField control={control} path={`${under}.rule`} />
          </div>
          {kind ? (
            <div className="fields" key={kind}>
              {RULE_FIELDS[kind].map((spec) => (
                <DeskControl key={spec.name} control={control} under={`${under}.rule`} spec={spec} />
              ))}
            </div>
          ) : null}
          <div>
            <button type="button" className="button stop" onClick={remove}>
              Take this criterion away
            </button>
          </div>
        </div>
      ) : null}
    </details>
  )
}

/** Choosing another kind starts its rule anew: figures of one kind mean nothing in another. */
function KindField({ control, path }: { control: Control<FieldValues>; path: string }) {
  const { field } = useController({ control, name: path })
  const kind = (field.value as { kind?: RuleKind } | undefined)?.kind ?? ''
  return (
    <div className="field">
      <label htmlFor={`${path}-kind`}>Kind of rule</label>
      <select
        id={`${path}-kind`}
        value={kind}
        onChange={(event) => field.onChange(event.target.value === '' ? {} : { kind: event.target.value })}
      >
        <option value="">Choose</option>
        {KINDS.map((one) => (
          <option key={one.id} value={one.id}>
            {one.label}
          </option>
        ))}
      </select>
    </div>
  )
}
