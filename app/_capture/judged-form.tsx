'use client'
import { createContext, type ReactNode, useContext, useMemo, useRef } from 'react'
import { type Control, type FieldValues, useWatch } from 'react-hook-form'
import type { FormSpec } from '@/lib/capture/forms/field-spec'
import { observedIn } from '@/lib/capture/observed-in'
import { settledPart } from '@/lib/capture/settled-part'
import type { PersonId } from '@/lib/domain/facts/fact'
import type { CriterionResult } from '@/lib/domain/judge/verdict'
import { type Moment, momentOf } from '@/lib/domain/time'
import type { CaptureContext } from './capture-context'
import { LiveVerdicts } from './live-verdicts'
import { FailingMarks } from './marks-slot'
import { useLiveVerdicts } from './use-live-verdicts'

type Failing = ReadonlyMap<string, ReadonlySet<string>>
const Results = createContext<readonly CriterionResult[]>([])

/** Judges what is keyed beside what is recorded, for the parts of the form that show it: no other part is drawn anew by a key. `paperAt` is the time that a paper tally states. */
export function JudgedForm({
  control,
  spec,
  context,
  observer,
  paperAt,
  replaces,
  children,
}: {
  control: Control<FieldValues>
  spec: FormSpec
  context: CaptureContext
  observer: PersonId
  paperAt: Moment | null
  replaces: string | null
  children: ReactNode
}) {
  const values = useWatch({ control }) as FieldValues
  const draft = useMemo(() => settledPart(spec.type, values), [values, spec])
  const observed = observedIn(spec, values) ?? paperAt ?? momentOf(Date.parse(context.judge.asOf), context.utcOffset)
  const { results, failing } = useLiveVerdicts(context.judge, draft, observed, observer, replaces)
  const shown = useRef<Failing>(failing)
  if (!isSame(shown.current, failing)) shown.current = failing
  return (
    <FailingMarks value={shown.current}>
      <Results value={results}>{children}</Results>
    </FailingMarks>
  )
}

/** The criteria of this point with what is keyed so far, within a `JudgedForm`. */
export function VerdictsSoFar() {
  return <LiveVerdicts results={useContext(Results)} />
}

function isSame(before: Failing, now: Failing): boolean {
  return (
    before.size === now.size &&
    [...now].every(([quantity, marks]) => {
      const known = before.get(quantity)
      return known !== undefined && known.size === marks.size && [...marks].every((mark) => known.has(mark))
    })
  )
}
