'use client'
import { createContext, type ReactNode, useCallback, useContext, useMemo, useRef, useState } from 'react'
import { type Control, type FieldValues, useWatch } from 'react-hook-form'
import type { FormSpec } from '@/lib/capture/forms/field-spec'
import { observedIn } from '@/lib/capture/observed-in'
import { settledPart } from '@/lib/capture/settled-part'
import { type TypedMark, withoutMark } from '@/lib/capture/without-mark'
import type { PersonId } from '@/lib/domain/facts/fact'
import { isSameJson } from '@/lib/domain/fold/apply-correction'
import type { CriterionResult } from '@/lib/domain/judge/verdict'
import { type Moment, momentOf } from '@/lib/domain/time'
import type { CaptureContext } from './capture-context'
import { LiveVerdicts } from './live-verdicts'
import { FailingMarks } from './marks-slot'
import { TellTypedMark } from './typed-mark'
import { useLiveVerdicts } from './use-live-verdicts'

type Failing = ReadonlyMap<string, ReadonlySet<string>>
const Results = createContext<readonly CriterionResult[]>([])

/**
 * Judges what is keyed beside what is recorded, for the parts of the form that show it: no other part is drawn anew by a key. A mark is judged once it is left, for half a number passes or fails by chance.
 * `paperAt` is the time that a paper tally states.
 */
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
  const [typed, setTyped] = useState<TypedMark | null>(null)
  const tell = useCallback(
    (next: TypedMark | null) => setTyped((now) => (now?.path === next?.path && now?.mark === next?.mark ? now : next)),
    [],
  )
  const left = useRef<FieldValues>(values)
  const now = withoutMark(values, typed)
  if (!isSameJson(left.current, now)) left.current = now
  const judged = left.current
  const draft = useMemo(() => settledPart(spec.type, judged), [judged, spec])
  const observed = observedIn(spec, judged) ?? paperAt ?? momentOf(Date.parse(context.judge.asOf), context.utcOffset)
  const { results, failing } = useLiveVerdicts(context.judge, draft, observed, observer, replaces)
  const shown = useRef<Failing>(failing)
  if (!isSame(shown.current, failing)) shown.current = failing
  return (
    <TellTypedMark value={tell}>
      <FailingMarks value={shown.current}>
        <Results value={results}>{children}</Results>
      </FailingMarks>
    </TellTypedMark>
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
