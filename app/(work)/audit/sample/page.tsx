import { randomBytes } from 'node:crypto'
import { offsetOf, requireDesk } from '@/app/_desk/require-desk'
import type { SampleParams } from '@/lib/server/views/audit-sample-params'
import { loadAuditSample } from '@/lib/server/views/audit-sample-view'
import { AuditNav } from '../audit-nav'
import { AuditRefused } from '../audit-refused'
import { ReachNote } from '../reach-note'
import { DrawNote } from './draw-note'
import { DrawnReading } from './drawn-reading'
import { SampleForm } from './sample-form'

export const metadata = { title: 'Sample' }

type Asked = Record<string, string | string[] | undefined>
const FIELDS = ['seed', 'n', 'size', 'repair', 'point', 'from', 'to', 'series'] as const

export default async function AuditSamplePage({ searchParams }: { searchParams: Promise<Asked> }) {
  const reading = await requireDesk()
  const asked = await searchParams
  const params: SampleParams = Object.fromEntries(
    FIELDS.flatMap((field) => {
      const value = asked[field]
      return typeof value === 'string' && value.trim() !== '' ? [[field, value]] : []
    }),
  )
  const loaded = await loadAuditSample(reading, params, offsetOf(reading))
  if (!loaded.ok) return <AuditRefused title="Sample" fault={loaded.error} />
  const { head, faults, repairs, draw } = loaded.value
  return (
    <main className="page stack sample-page" id="main">
      <div className="page-head">
        <div>
          <p className="eyebrow">{head.organisation}</p>
          <h1>{draw ? 'Readings drawn at random' : 'Draw readings at random'}</h1>
        </div>
        <AuditNav at="/audit/sample" />
      </div>
      <ReachNote reach={head.reach} />
      <SampleForm
        params={params}
        proposedSeed={randomBytes(8).toString('hex')}
        sizeNow={head.log.checkpoint.size}
        repairs={repairs}
        faults={faults}
        isDrawn={draw !== null}
      />
      {draw ? (
        <>
          <DrawNote sample={loaded.value} draw={draw} />
          {draw.lines.map((line, at) => (
            <DrawnReading key={line.number} line={line} place={at + 1} />
          ))}
        </>
      ) : null}
    </main>
  )
}
