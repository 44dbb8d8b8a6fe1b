import Link from 'next/link'
import { pathOf } from '@/app/_desk/require-desk'
import { StandingMark } from '@/app/_desk/standing-mark'
import { StatusMark } from '@/app/_ui/status-mark'
import { showGs1 } from '@/lib/calc/gs1-elements'
import type { LabelMeaning } from '@/lib/domain/labels/read-label'
import type { ScanHit, ScanView } from '@/lib/server/views/scan-view'
import { labelFault } from './label-words'

const FOLDERS = { batch: 'batches', instrument: 'instruments', repair: 'repairs' } as const
const KINDS = { batch: 'Batch', instrument: 'Instrument', repair: 'Repair' } as const

/** What a scanned label says and which one it names, or that it is not known here. */
export function LabelFound({ view, text }: { view: ScanView; text: string }) {
  if (view.kind === 'unread') {
    const fault = labelFault(view.refusal)
    return (
      <div className="note refused" role="alert">
        <strong>{fault.title}</strong>
        <span>{fault.todo}</span>
        <span className="quiet small">Read: {text}</span>
      </div>
    )
  }
  return (
    <section className="stack tight" aria-label="What the label names">
      {view.hits.map((hit) => (
        <HitCard key={hit.stream} hit={hit} />
      ))}
      {view.doubts.map((doubt) => (
        <p key={doubt.stream + doubt.what} className="note warn">
          <strong>
            {doubt.what === 'other article'
              ? `Batch ${doubt.number} is another article.`
              : `The use-by day is not the one of batch ${doubt.number}.`}
          </strong>
          <span>
            The label says {doubt.label}, the record {doubt.record}. Compare the package before use.
          </span>
        </p>
      ))}
      {view.hits.length === 0 && view.doubts.length === 0 ? (
        <div className="note refused" role="alert">
          <strong>This label is not known here.</strong>
          <span>{notKnown(view.meaning)}</span>
        </div>
      ) : null}
      <details className="act">
        <summary>
          <span>What the label says</span>
        </summary>
        <div className="act-body">
          <dl className="pairs">
            {pairsOf(view.meaning).map(([name, value]) => (
              <div key={name} style={{ display: 'contents' }}>
                <dt>{name}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </div>
      </details>
    </section>
  )
}

function HitCard({ hit }: { hit: ScanHit }) {
  return (
    <article className="sheet stack tight label-hit">
      <div className="sheet-head">
        <h2>
          {KINDS[hit.kind]} {hit.number}
        </h2>
        {hit.standing ? <StandingMark standing={hit.standing} /> : null}
        {hit.status ? <StatusMark status={hit.status} /> : null}
      </div>
      <p>{hit.what}</p>
      <p className="quiet small">Known by its {hit.by}.</p>
      <div className="row">
        <Link className="button" href={pathOf(FOLDERS[hit.kind], hit.stream)}>
          Open {hit.kind} {hit.number}
        </Link>
        <Link className="button plain" href={pathOf(`trace/${hit.kind}`, hit.stream)}>
          Trace it
        </Link>
      </div>
    </article>
  )
}

function notKnown(meaning: LabelMeaning): string {
  if (meaning.kind === 'gs1' && meaning.elements['10'] !== undefined)
    return `No batch ${meaning.elements['10']} was received. Stores receive it before anyone uses it.`
  if (meaning.kind === 'gs1' && meaning.elements['8004'] !== undefined)
    return `No instrument or repair has the asset number ${meaning.elements['8004']}.`
  if (meaning.kind === 'article') return `No batch of article ${meaning.gtin} was received.`
  return 'No batch, instrument or repair goes by it. Compare it with the label, or look in the lists.'
}

function pairsOf(meaning: LabelMeaning): [string, string][] {
  switch (meaning.kind) {
    case 'own':
      return [['Printed here for', meaning.stream.replace(':', ' ')]]
    case 'article':
      return [['Article number', meaning.gtin]]
    case 'text':
      return [['Text', meaning.text]]
    case 'gs1':
      return [
        ['Fields', showGs1(meaning.elements)],
        ...(meaning.expiry ? [['Use by', meaning.expiry.date] as [string, string]] : []),
        ...(meaning.production ? [['Made', meaning.production.date] as [string, string]] : []),
      ]
  }
}
