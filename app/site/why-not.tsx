import { barrierWords } from '@/app/_ui/barrier-words'

/** Why something cannot be decided here. */
export function WhyNot({ what, barrier }: { what: string; barrier: { code: string; [fact: string]: unknown } }) {
  return (
    <div className="note warn">
      <strong>{what}</strong>
      {barrierWords(barrier).map((line) => (
        <span key={line}>{line}</span>
      ))}
    </div>
  )
}
