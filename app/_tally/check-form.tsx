'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { ReasonField } from '@/app/_parts/reason-field'
import { answerOf } from '@/app/_ui/answer-of'
import { RefusalNote, type ShownRefusal } from '@/app/_ui/refusal-note'
import { checkTranscriptionAction } from '@/app/(work)/actions/point-actions'

type Body = { point: string; attempt: number; record: string; corrections: string[] }

/** A second person says that a copy agrees with its paper, or what differs. */
export function CheckForm({ stream, body, back }: { stream: string; body: Body; back: string }) {
  const router = useRouter()
  const [remark, setRemark] = useState('')
  const [isSending, setSending] = useState(false)
  const [refusal, setRefusal] = useState<ShownRefusal | null>(null)
  const say = async (result: 'agrees' | 'differs') => {
    setSending(true)
    const said = remark.trim()
    const answer = await answerOf(() =>
      checkTranscriptionAction({ stream, body: { ...body, result, ...(said === '' ? {} : { remark: said }) } }),
    )
    setSending(false)
    if (!answer.ok) return setRefusal(answer.error)
    router.push(back)
    router.refresh()
  }
  return (
    <form className="stack tight" onSubmit={(event) => event.preventDefault()}>
      <p>Compare every figure, time, mark and name with the paper, one after the other.</p>
      <ReasonField label="What differs, or a remark" value={remark} change={setRemark} />
      {refusal ? <RefusalNote refusal={refusal} /> : null}
      <div className="row">
        <button type="button" className="button" disabled={isSending} onClick={() => void say('agrees')}>
          It agrees with the paper
        </button>
        <button
          type="button"
          className="button stop"
          disabled={isSending || remark.trim().length < 3}
          onClick={() => void say('differs')}
        >
          It differs: who entered it corrects it
        </button>
      </div>
      <p className="quiet small">To say that it differs, write what differs first.</p>
    </form>
  )
}
