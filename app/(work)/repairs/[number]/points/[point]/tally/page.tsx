import Link from 'next/link'
import { notFound } from 'next/navigation'
import { requireDesk } from '@/app/_desk/require-desk'
import { PrintButton } from '@/app/_parts/design-print'
import { TallySheet } from '@/app/_tally/tally-sheet'
import { loadTallyView } from '@/lib/server/views/tally-view'

type Props = { params: Promise<{ number: string; point: string }>; searchParams: Promise<{ attempt?: string }> }

export const metadata = { title: 'Tally sheet' }

export default async function TallyPage({ params, searchParams }: Props) {
  const reading = await requireDesk()
  const { number: raw, point } = await params
  const number = decodeURIComponent(raw)
  const asked = (await searchParams).attempt
  const view = await loadTallyView(reading, number, point, asked ? Number(asked) : null)
  if (!view) notFound()
  return (
    <main className="page tally-page" id="main">
      <div className="page-head no-print">
        <div>
          <p className="eyebrow">
            <Link href={`/repairs/${encodeURIComponent(number)}/points/${point}?attempt=${view.point.attempt.attempt}`}>
              ‹ {number}
            </Link>{' '}
            · point {point} · attempt {view.point.attempt.attempt}
          </p>
          <h1>Tally sheet</h1>
          <p>
            For an area where no phone or camera may be taken. Print it at A4 and 100 %; each print has a number of its
            own, so print one for each use and do not copy it.
          </p>
        </div>
        <PrintButton />
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls is reached by a keyboard only when it takes the focus */}
      <section className="tally-scroll" aria-label="The sheet" tabIndex={0}>
        <TallySheet view={view} />
      </section>
    </main>
  )
}
