import Link from 'next/link'
import type { ChainLine, ChainStep } from '@/lib/server/views/audit-chain-step'

/** The steps behind a reading, in order. What is missing says so in words. */
export function ChainList({ steps }: { steps: readonly ChainStep[] }) {
  return (
    <dl className="pairs small chain">
      {steps.map((step, at) => (
        // A reading may rest on two instruments: steps of one title are told apart by their place.
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <div key={`${step.title}${at}`} className="pair">
          <dt>{step.title}</dt>
          <dd>
            {step.state === 'missing' ? <strong className="not-proven">Missing: </strong> : null}
            {step.lines.map((line, no) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: lines never move
              <Line key={no} line={line} />
            ))}
          </dd>
        </div>
      ))}
    </dl>
  )
}

function Line({ line }: { line: ChainLine }) {
  return (
    <span className={`chain-line${line.photo ? ' with-photo' : ''}`}>
      {line.photo ? (
        // biome-ignore lint/performance/noImgElement: a stored rendition of the record, not an asset
        <img src={`/api/photos/${line.photo}/thumb`} alt="" />
      ) : null}
      <span className={line.isWrong ? 'not-proven' : undefined}>
        {line.href ? <Link href={line.href}>{line.text}</Link> : line.text}
        {line.note ? <span className="quiet"> {line.note}</span> : null}
      </span>
    </span>
  )
}
