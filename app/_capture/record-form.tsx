'use client'
import { zodResolver } from '@hookform/resolvers/zod'
import { useRouter } from 'next/navigation'
import { useCallback, useMemo, useState } from 'react'
import { type FieldValues, FormProvider, useForm } from 'react-hook-form'
import { OutboxRefusal } from '@/app/_parts/outbox-refusal'
import { TranscriptionLater } from '@/app/_tally/transcription-later'
import { usePaperCopy } from '@/app/_tally/use-paper-copy'
import { draftKey } from '@/lib/capture/draft-store'
import { FORMS } from '@/lib/capture/forms/form-table'
import { observedIn } from '@/lib/capture/observed-in'
import { PersonId } from '@/lib/domain/facts/fact'
import { type PointRecord, RECORD_SCHEMAS, type RecordType } from '@/lib/domain/records/record'
import { lateFromPaper, paperMoment, statePaper } from '@/lib/domain/tally/paper-copy'
import { type Moment, minutesBetween } from '@/lib/domain/time'
import { type CaptureContext, CaptureProvider } from './capture-context'
import { DraftNotes } from './draft-notes'
import { emptyLists } from './empty-lists'
import { FormField } from './form-field'
import { JudgedForm, VerdictsSoFar } from './judged-form'
import { KeyDock } from './key-dock'
import { LateEntry, type LateReason } from './late-entry'
import { readNow } from './read-now'
import { type SaveRefusal, type SaveTarget, type Saving, saveRecord } from './save-record'
import { TimerStrip } from './timer-strip'
import { useDraft } from './use-draft'
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
  /** The record is copied from a paper tally, with the number of its sheet where it is known. */
  paper?: { sheet: string } | undefined
}

/** The form of one record: one zod schema from form to fact, verdicts while keying, a draft kept on this device. */
export function RecordForm({
  type,
  target,
  context,
  tenant,
  me,
  back,
  initial,
  replaces,
  onSite,
  paper,
}: RecordFormProps) {
  const spec = FORMS[type]
  const router = useRouter()
  const blank = useMemo<FieldValues>(
    () => ({ ...(initial ?? { type, ...emptyLists(type, context) }) }),
    [initial, type, context],
  )
  const form = useForm<FieldValues>({
    resolver: zodResolver(RECORD_SCHEMAS[type] as never) as never,
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
      of: replaces ?? (paper ? `paper ${paper.sheet}` : 'new'),
    }),
  )
  const [refusal, setRefusal] = useState<SaveRefusal | null>(null)
  const [late, setLate] = useState<LateReason>({ reason: '', source: 'memory' })
  const [reason, setReason] = useState('')
  const [needsLate, setNeedsLate] = useState(false)
  const { copy, change } = usePaperCopy(paper ? { ...target, tenant, person: me, sheet: paper.sheet } : null)
  const [lacks, setLacks] = useState<readonly string[]>([])
  const onPaper = paper ? paperMoment(copy, context.utcOffset) : null
  const observer = PersonId.parse(copy.observer || me)
  const save = useCallback(
    async (record: PointRecord) => {
      const now: Moment = await readNow(context.utcOffset, context.clockKind)
      const own = observedIn(spec, record)
      const stated = paper ? statePaper(copy, own, context.utcOffset) : null
      setLacks(stated && !stated.ok ? stated.lacks : [])
      if (stated && !stated.ok) return
      const at = stated?.value.observedAt ?? own ?? now
      const isLate = minutesBetween(at, now) > context.lateAfterMinutes
      if (isLate && !stated && late.reason.trim().length < 3) return setNeedsLate(true)
      const saving: Saving = {
        target,
        record,
        observedAt: replaces ? now : at,
        enteredAt: now,
        late: replaces || !isLate ? null : stated ? lateFromPaper(stated.value.transcribed) : late,
        ...(stated ? { paper: stated.value } : {}),
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
    [back, context, copy, drop, initial, late, me, onSite, paper, reason, replaces, router, spec, target, tenant],
  )
  const inForm = useMemo(() => ({ ...context, isFromPaper: paper !== undefined }), [context, paper])
  const once = useOnce()
  const { isSubmitting, submitCount, errors } = form.formState
  return (
    <CaptureProvider value={inForm}>
      <FormProvider {...form}>
        <JudgedForm
          control={form.control}
          spec={spec}
          context={context}
          observer={observer}
          paperAt={onPaper}
          replaces={replaces ?? null}
        >
          <KeyDock>
            <form
              className="form record"
              noValidate
              onSubmit={form.handleSubmit((record) => once(() => save(record as unknown as PointRecord)))}
            >
              <DraftNotes restoredAt={restoredAt} isRefused={isRefused} restart={() => restart(blank)} />
              {paper ? (
                <TranscriptionLater
                  copy={copy}
                  change={change}
                  target={target}
                  me={me}
                  hasOwnTime={spec.observed !== null}
                  lacks={lacks}
                />
              ) : null}
              {spec.timer && !paper ? <TimerStrip spec={spec} control={form.control} context={context} /> : null}
              {spec.fields.map((field) => (
                <FormField key={field.name} spec={field} control={form.control} under="" />
              ))}
              <section className="sheet">
                <h2>Against the specification</h2>
                <VerdictsSoFar />
              </section>
              {needsLate ? <LateEntry value={late} change={setLate} /> : null}
              {replaces ? (
                <label className="field">
                  <span className="label">Reason of the correction</span>
                  <span className="hint">
                    For an error in what was keyed only. A second measurement is a new record.
                  </span>
                  <textarea value={reason} onChange={(event) => setReason(event.target.value)} />
                </label>
              ) : null}
              {refusal ? <OutboxRefusal refusal={refusal} /> : null}
              {submitCount > 0 && Object.keys(errors).length > 0 ? (
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
          </KeyDock>
        </JudgedForm>
      </FormProvider>
    </CaptureProvider>
  )
}
