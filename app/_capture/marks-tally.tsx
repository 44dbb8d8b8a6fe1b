'use client'
import { compareDecimals, meanOf, showFraction } from '@/lib/domain/decimal'
import { meanPlaces } from '@/lib/domain/judge/quantity-names'
import { type NumberReading, showReading } from '@/lib/domain/reading'
import type { MarkedReading } from '@/lib/domain/records/common'

/** Lowest, mean, taken and outside, as keyed so far. The verdict itself stands in the list of criteria. */
export function MarksTally({
  quantity,
  readings,
  planned,
  failing,
}: {
  quantity: string
  readings: readonly MarkedReading[]
  planned: number
  failing: ReadonlySet<string>
}) {
  const numbers = readings.flatMap((one) =>
    one.reading.kind === 'number' ? [{ mark: one.mark, reading: one.reading as NumberReading }] : [],
  )
  const lowest = [...numbers].sort((a, b) => compareDecimals(a.reading, b.reading))[0]
  const mean = meanOf(numbers.map((one) => one.reading))
  const places = meanPlaces(quantity, Math.max(0, ...numbers.map((one) => one.reading.scale)))
  return (
    <div className="tally" aria-live="off">
      <div>
        lowest<b>{lowest ? `${showReading(lowest.reading)} at ${lowest.mark}` : '–'}</b>
      </div>
      <div>
        mean so far<b>{mean ? showFraction(mean, places) : '–'}</b>
      </div>
      <div>
        taken
        <b>
          {readings.length} of {planned}
        </b>
      </div>
      <div>
        outside<b className={failing.size > 0 ? 'fail' : ''}>{failing.size}</b>
      </div>
    </div>
  )
}
