'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useRouter } from 'next/navigation'
import { useCallback, useMemo, useState } from 'react'
import { type FieldValues, FormProvider, useForm, useWatch } from 'react-hook-form'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { draftKey } from '@/lib/capture/draft-store'
import { FORMS } from '@/lib/capture/forms/form-table'
import { observedIn } from '@/lib/capture/observed-in'
import { settledPart } from '@/lib/capture/settled-part'
import { PersonId } from '@/lib/domain/facts/fact'
import { PointRecord, type RecordType } from '@/lib/domain/records/record'
import { type Moment, minutesBetween, momentOf } from '@/lib/domain/time'
import { type CaptureContext, CaptureProvider } from './capture-context'
import { FormField } from './form-field'
import { FormHands } from './form-hands'
import { LateEntry, type LateReason } from './late-entry'
import { LiveVerdicts } from './live-verdicts'
import { readNow } from './read-now'
import { type SaveRefusal, type SaveTarget, type Saving, saveRecord } from './save-record'
import { TimerStrip } from './timer-strip'
import { useDraft } from './use-draft'
import { useLiveVerdicts } from './use-live-verdicts'
import { useOnce } from './use-once'

export type RecordFormProps = {
  type: RecordType
  target: SaveTarget
  context: CaptureContext
  tenant: string
  me: string
  back: string
  initial?: PointRecord
  replaces?: string
  /** Where there may be no network: keeps the record on this device, then leaves the form. Otherwise it goes to the server. */
  onSite?: { keep(saving: Saving): Promise<SaveRefusal | null>; leave(): void }
}

/** The form of one record: one zod schema from form to fact, verdicts while keying, a draft kept on this device. */
export function RecordForm({ type, target, context, tenant, me, back, initial, replaces, onSite }: RecordFormProps) {
  const spec = FORMS[type]
  const router = useRouter()
  const blank = useMemo<FieldValues>(
    () => ({ ...(initial ?? { type, ...emptyLists(type, context) }) }),
    [initial, type, context],
  )
  const form = useForm<FieldValues>({
    resolver: zodResolver(PointRecord as never) as never,
    defaultValues: blank,
    mode: 'onTouched',
  })
  const { restoredAt, isRefused, drop, restart } = useDraft(
    form,
    draftKey({
      tenant,
      person: me,
      repair: target.repair,
      point: target.point,
      attempt: target.attempt,
      type,
      of: replaces ?? 'new',
    }),
  )
  const values = useWatch({ control: form.control }) as FieldValues
  const [refusal, setRefusal] = useState<SaveRefusal | null>(null)
  const [late, setLate] = useState<LateReason>({ reason: '', source: 'memory' })
  const [reason, setReason] = useState('')
  const [needsLate, setNeedsLate] = useState(false)
  const draft = useMemo(() => settledPart(type, values), [values, type])
  const observed = observedIn(spec, values) ?? momentOf(Date.parse(context.judge.asOf), context.utcOffset)
  const { results, failing } = useLiveVerdicts(context.judge, draft, observed, PersonId.parse(me), replaces ?? null)
  const save = useCallback(
    async (record: PointRecord) => {
      const now: Moment = await readNow(context.utcOffset, context.clockKind)
      const at = observedIn(spec, record) ?? now
      if (minutesBetween(at, now) > context.lateAfterMinutes && late.reason.trim().length < 3) return setNeedsLate(true)
      const saving: Saving = {
        target,
        record,
        observedAt: replaces ? now : at,
        enteredAt: now,
        late: !replaces && minutesBetween(at, now) > context.lateAfterMinutes ? late : null,
        ...(replaces && initial ? { replaces, was: initial, reason } : {}),
      }
      const refused = onSite ? await onSite.keep(saving) : await saveRecord(saving, { tenant, person: me })
      if (refused) return setRefusal(refused)
      drop()
      if (onSite) onSite.leave()
      else router.push(back)
      if (!onSite) router.refresh()
      return 'saved'
    },
    [back, context, drop, initial, late, me, onSite, reason, replaces, router, spec, target, tenant],
  )
  const once = useOnce()
  const { isSubmitting, submitCount, isValid } = form.formState
  return (
    <CaptureProvider value={context}>
      <FormProvider {...form}>
        <FormHands failing={failing}>
          <form
            className="form"
            noValidate
            onSubmit={form.handleSubmit((record) => once(() => save(record as unknown as PointRecord)))}
          >
            {restoredAt ? (
              <div className="note">
                <strong>Your draft is back.</strong>
                <span>
                  Kept on this device at{' '}
                  {new Date(restoredAt).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })}.
                </span>
                <button type="button" className="button plain" onClick={() => restart(blank)}>
                  Start afresh
                </button>
              </div>
            ) : null}
            {isRefused ? (
              <p className="note refused" role="alert">
                <strong>This device refuses to keep drafts.</strong> What you key is lost if the page closes: save
                often, or free some storage.
              </p>
            ) : null}
            {spec.timer ? <TimerStrip spec={spec} values={values} context={context} /> : null}
            {spec.fields.map((field) => (
              <FormField key={field.name} spec={field} control={form.control} under="" />
            ))}
            <section className="sheet">
              <h2>Against the specification</h2>
              <LiveVerdicts results={results} />
            </section>
            {needsLate ? <LateEntry value={late} change={setLate} /> : null}
            {replaces ? (
              <label className="field">
                <span className="label">Reason of the correction</span>
                <span className="hint">For an error in what was keyed only. A second measurement is a new record.</span>
                <textarea value={reason} onChange={(event) => setReason(event.target.value)} />
              </label>
            ) : null}
            {refusal ? <OutboxRefusal refusal={refusal} /> : null}
            {submitCount > 0 && !isValid ? (
              <p className="note refused" role="alert">
                <strong>Not saved yet.</strong> Some fields above are missing or cannot be read. Nothing is lost: the
                draft stays here.
              </p>
            ) : null}
            <div className="save-dock">
              <button
                type="submit"
                className="button"
                disabled={isSubmitting || (replaces !== undefined && reason.trim().length < 3)}
              >
                {isSubmitting ? 'Saving' : replaces ? 'Save the correction' : 'Save to the record'}
              </button>
            </div>
          </form>
        </FormHands>
      </FormProvider>
    </CaptureProvider>
  )
}

/** Lists that a record must have, empty; and the chalk grid of point 01, which is a layout and no reading. */
function emptyLists(type: RecordType, context: CaptureContext): FieldValues {
  const values: FieldValues = {}
  for (const field of FORMS[type].fields) {
    if (
      field.kind === 'marks' ||
      field.kind === 'text-list' ||
      (field.kind === 'list' && field.atLeast === 0 && !field.optional)
    )
      values[field.name] = []
    if (field.kind === 'chalk-grid' && context.grid) values[field.name] = context.grid
  }
  return values
}
