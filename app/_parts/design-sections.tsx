import Link from 'next/link'
import type { ReactNode } from 'react'
import { PictureSvg } from '@/app/_ui/picture-svg'
import { showSigned } from '@/lib/domain/decimal'
import type { DesignSheet } from '@/lib/domain/design/design-sheet'
import { sensitivityPanel } from '@/lib/domain/design/sensitivity-picture'
import { showReading, showReadingUnit } from '@/lib/domain/reading'
import { showMoment } from '@/lib/domain/time'
import type { DesignView } from '@/lib/server/views/design-view'
import { WallTable } from './design-tables'

/** Which sheet, of which repair, where, and its chosen figures. */
export function DesignHead({ view, children }: { view: DesignView; children: ReactNode }) {
  const { state } = view
  const { design, opened } = state
  return (
    <div className="page-head">
      <div>
        <p className="eyebrow">
          <Link href={`/repairs/${encodeURIComponent(state.number)}`}>‹ {state.number}</Link> {opened.body.line}{' '}
          {opened.body.lineTitle}, {opened.body.datum} {showSigned(opened.body.stationFromDatum)} mm,{' '}
          {opened.body.clock} o’clock
        </p>
        <h1>{design ? `Design sheet ${design.sheetNo} rev ${design.revision}` : 'Design sheet'}</h1>
        {design ? (
          <dl className="facts">
            {(
              [
                ['Plies', showReading(design.plies)],
                ['Least thickness', showReadingUnit(design.minThickness)],
                ['Overlap each side', showReadingUnit(design.overlapEachSide)],
                ['Taper', showReadingUnit(design.taper)],
                ['Total length', showReadingUnit(design.totalLength)],
                ['Test pressure', showReadingUnit(design.testPressure)],
                ['Life', showReadingUnit(design.lifeYears)],
              ] as const
            ).map(([name, value]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        ) : null}
      </div>
      <div className="row no-print">{children}</div>
    </div>
  )
}

/** How the plies move with wall, pressure and hole. */
export function DesignSensitivity({ sheet }: { sheet: DesignSheet }) {
  return (
    <section className="sheet sensitivity">
      <div className="sheet-head">
        <h2>Plies against wall, pressure and hole</h2>
        <span className="quiet small">one moved, the others as they are</span>
      </div>
      <div className="panels">
        {sheet.sensitivity.map((one) => (
          <PictureSvg key={one.what} picture={sensitivityPanel(one, sheet.sensitivity, sheet.chosenPlies)} />
        ))}
      </div>
    </section>
  )
}

/** The defect as found: readings and photos. */
export function DesignAsFound({ view }: { view: DesignView }) {
  const { state, photos } = view
  const { defect } = state
  return (
    <section className="sheet as-found">
      <h2>As found</h2>
      {defect ? (
        <>
          <p>
            {defect.defectKind === 'through-wall' ? 'Through-wall' : 'Part-wall'}, hole {showReading(defect.holeAxial)}{' '}
            × {showReadingUnit(defect.holeHoop)}, defect {showReadingUnit(defect.defectLength)} long; {defect.cause};{' '}
            {defect.material}, {defect.medium}; operating at {showReadingUnit(defect.operatingPressure)}.
          </p>
          <div className="scroll-x">
            <WallTable defect={defect} />
          </div>
        </>
      ) : (
        <p className="not-proven">No defect is recorded.</p>
      )}
      {photos.length === 0 ? (
        <p className="not-proven">No photo of the defect.</p>
      ) : (
        <div className="thumbs">
          {photos.map(({ fact }) => (
            <figure key={fact.id}>
              <a href={`/api/photos/${fact.body.photo.sha256}/rendition`}>
                {/* Photos are served by our own route, already at their size. */}
                {/* biome-ignore lint/performance/noImgElement: see above */}
                <img
                  src={`/api/photos/${fact.body.photo.sha256}/thumb`}
                  alt={fact.body.caption}
                  width={fact.body.photo.thumb.widthPx}
                  height={fact.body.photo.thumb.heightPx}
                />
              </a>
              <figcaption>
                <strong>{fact.body.caption}</strong>
                <span className="quiet">{showMoment(fact.observedAt)}</span>
              </figcaption>
            </figure>
          ))}
        </div>
      )}
    </section>
  )
}

/** Other repairs on the same line: a warning where stretches overlap or cannot be compared. */
export function DesignNeighbours({ view: { neighbours } }: { view: DesignView }) {
  if (neighbours.length === 0) return null
  const isClear = neighbours.every((one) => one.kind === 'beside')
  return (
    <section className={isClear ? 'sheet' : 'note warn'}>
      <strong>{isClear ? 'Other repairs on this line' : 'Another repair lies on this line'}</strong>
      {neighbours.map((one) => (
        <span key={one.number}>
          <Link href={`/repairs/${encodeURIComponent(one.number)}/design`}>{one.number}</Link> ({one.status}) {one.text}
          .
        </span>
      ))}
    </section>
  )
}
