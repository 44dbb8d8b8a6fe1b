'use client'
import { useState } from 'react'
import { RefusalNote, type ShownRefusal } from '@/app/_ui/refusal-note'
import { acceptRepairAction } from '@/app/(work)/actions/repair-actions'
import { parseDecimal } from '@/lib/domain/decimal'
import { useAct } from './act-note'
import { type SignerChoice, SignerFields, type SignerState, signerReady, signerValue } from './signer-fields'

const KINDS = ['accepted', 'accepted under concession', 'accepted on condition'] as const
type Kind = (typeof KINDS)[number]
type Condition = { text: string; owner: string; dueOn: string }
type Props = {
  stream: string
  heads: readonly { stream: string; length: number }[]
  signers: readonly SignerChoice[]
  me: string
  conceded: readonly string[]
  lifeFrom: string
  persons: readonly { id: string; label: string }[]
}

/** Accept a repair: kind, life, next inspection, restrictions, conditions. A concession stays visible; it turns no fail into a pass. */
export function AcceptForm({ stream, heads, signers, me, conceded, lifeFrom, persons }: Props) {
  const { run, refusal, isBusy } = useAct()
  const [kind, setKind] = useState<Kind | ''>('')
  const [form, setForm] = useState({ life: '', from: '', next: '', restrictions: '' })
  const [condition, setCondition] = useState<Condition>({ text: '', owner: '', dueOn: '' })
  const [signer, setSigner] = useState<SignerState>({ person: '', role: '', password: '' })
  const [wrong, setWrong] = useState<ShownRefusal | null>(null)
  const signed = signerValue(signer, signers)
  const accept = async () => {
    const lifeYears = parseDecimal(form.life)
    if (!lifeYears) return setWrong({ code: 'invalid', fields: { life: ['a number of years'] } })
    setWrong(null)
    await run(() =>
      acceptRepairAction({
        stream,
        signer: signed,
        body: {
          kind,
          lifeYears,
          lifeFrom: form.from,
          nextInspectionOn: form.next,
          restrictions: form.restrictions
            .split('\n')
            .map((line) => line.trim())
            .filter((line) => line !== ''),
          ...(kind === 'accepted under concession' && conceded[0] ? { concession: conceded[0] } : {}),
          conditions: kind === 'accepted on condition' ? [condition] : [],
          heads: [...heads],
        },
      }),
    )
  }
  const shown = wrong ?? refusal
  return (
    <section className="sheet">
      <h2>Accept</h2>
      <div className="stack">
        <fieldset className="field">
          <legend className="label">Kind of acceptance</legend>
          <div className="choice">
            {KINDS.map((one) => (
              <label key={one}>
                <input type="radio" name="acceptance" checked={kind === one} onChange={() => setKind(one)} />
                {one}
              </label>
            ))}
          </div>
        </fieldset>
        {conceded.length > 0 ? (
          <p className="note warn">
            Conceded under {conceded.map((one) => one.replace('nonconformance:', '')).join(', ')}: the result stays
            fail.
          </p>
        ) : null}
        <div className="fields">
          <label className="field">
            <span className="label">Life, years</span>
            <input
              inputMode="decimal"
              value={form.life}
              onChange={(event) => setForm({ ...form, life: event.target.value })}
            />
          </label>
          <label className="field">
            <span className="label">Life counts from ({lifeFrom})</span>
            <input type="date" value={form.from} onChange={(event) => setForm({ ...form, from: event.target.value })} />
          </label>
          <label className="field">
            <span className="label">Next inspection</span>
            <input type="date" value={form.next} onChange={(event) => setForm({ ...form, next: event.target.value })} />
          </label>
        </div>
        <label className="field">
          <span className="label">Restrictions, one line each</span>
          <textarea
            value={form.restrictions}
            onChange={(event) => setForm({ ...form, restrictions: event.target.value })}
          />
        </label>
        {kind === 'accepted on condition' ? (
          <fieldset className="group">
            <legend>Condition</legend>
            <label className="field">
              <span className="label">What must be done</span>
              <input
                value={condition.text}
                onChange={(event) => setCondition({ ...condition, text: event.target.value })}
              />
            </label>
            <label className="field">
              <span className="label">Owner</span>
              <select
                value={condition.owner}
                onChange={(event) => setCondition({ ...condition, owner: event.target.value })}
              >
                <option value="">Choose</option>
                {persons.map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.label}
                  </option>
                ))}
              </select>
            </label>
            <label className="field">
              <span className="label">Due on</span>
              <input
                type="date"
                value={condition.dueOn}
                onChange={(event) => setCondition({ ...condition, dueOn: event.target.value })}
              />
            </label>
          </fieldset>
        ) : null}
        <SignerFields signers={signers} me={me} value={signer} change={setSigner} only={['inspector']} />
        {shown ? <RefusalNote refusal={shown} /> : null}
        <button
          type="button"
          className="button"
          disabled={isBusy || kind === '' || !signed || !signerReady(signer)}
          onClick={accept}
        >
          Accept and sign
        </button>
      </div>
    </section>
  )
}
