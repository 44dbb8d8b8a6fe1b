import Link from 'next/link'
import { notFound, redirect } from 'next/navigation'
import { RepairPlots } from '@/app/_parts/attempt-plots'
import { Ladder } from '@/app/_parts/ladder'
import { RepairHead } from '@/app/_parts/repair-head'
import { RepairMaps } from '@/app/_parts/repair-maps'
import { RepairSide } from '@/app/_parts/repair-side'
import { TakeToSite } from '@/app/_parts/take-to-site'
import { PictureSvg } from '@/app/_ui/picture-svg'
import { sectionPicture } from '@/lib/domain/pictures/section-picture'
import { instantOf } from '@/lib/domain/time'
import { openReadingDesk } from '@/lib/server/views/reading-desk'
import { loadRepairView } from '@/lib/server/views/repair-view'

export async function generateMetadata({ params }: { params: Promise<{ number: string }> }) {
  return { title: `Repair ${decodeURIComponent((await params).number)}` }
}

export default async function RepairPage({ params }: { params: Promise<{ number: string }> }) {
  const reading = await openReadingDesk()
  if (!reading) redirect('/sign-in')
  const view = await loadRepairView(reading, decodeURIComponent((await params).number))
  if (!view) notFound()
  const { state, names } = view
  return (
    <main className="page" id="main">
      <RepairHead state={state}>
        <TakeToSite number={state.number} owner={{ tenant: reading.actor.tenant, person: view.me }} />
        <Link className="button plain" href={`/nonconformances/new?repair=${state.number}`}>
          Raise a nonconformance
        </Link>
        <Link className="button plain" href={`/repairs/${state.number}/label`}>
          Label
        </Link>
        <Link className="button plain" href={`/repairs/${state.number}/design`}>
          Design sheet
        </Link>
        <Link className="button" href={`/repairs/${state.number}/dossier`}>
          Dossier
        </Link>
      </RepairHead>
      <div className="two">
        <div className="stack">
          <section className="sheet">
            <div className="sheet-head">
              <h2>Section through the leak</h2>
            </div>
            <PictureSvg picture={sectionPicture(state)} />
          </section>
          <RepairMaps state={state} />
          <RepairPlots state={state} />
          <RepairSide view={view} />
        </div>
        <div className="stack first-on-phone">
          <Ladder
            number={state.number}
            points={state.points}
            windows={state.windows}
            names={names}
            nowMs={instantOf(reading.desk.now(null))}
          />
        </div>
      </div>
    </main>
  )
}
