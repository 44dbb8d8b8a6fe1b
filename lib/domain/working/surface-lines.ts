import { showDecimal } from '../decimal'
import { showExact } from '../judge/show-exact'
import { saltOf, saltReading } from '../judge/surface-readings'
import { showReading, showUnit } from '../reading'
import { type OwnRecord, ofType, type WorkingInput } from './working'
import { input } from './working-inputs-of-work'

/** What salts were computed from: water, patch, conductivities and factor of each extraction. */
export function saltInputs(own: readonly OwnRecord[]): WorkingInput[] {
  return ofType(own, 'cleanliness').flatMap(({ record, fact }) =>
    (record.extractions ?? []).flatMap((one) => [
      input(`${one.mark} V`, one.water, fact),
      input('A', one.area, fact),
      input('blank', one.blank, fact),
      input('after', one.after, fact),
      input('c', one.factor, fact),
    ]),
  )
}

/** Salt density of each extraction with its numbers put in. */
export function saltLines(own: readonly OwnRecord[]): string[] {
  return ofType(own, 'cleanliness').flatMap(({ record }) =>
    (record.extractions ?? []).map((one) => {
      const exact = saltOf(one)
      return exact
        ? `${one.mark}: 100 × ${showDecimal(one.factor)} × ${showDecimal(one.water)} × (${showDecimal(one.after)} − ${showDecimal(one.blank)}) / ${showDecimal(one.area)} = ${showReading(saltReading(one))} mg/m²`
        : `${one.mark}: not usable, the reading lies below its blank or a value is not above zero`
    }),
  )
}

/** Profile heights less the film of the replica tape; where nothing is taken off, no line. */
export function profileLines(own: readonly OwnRecord[]): string[] {
  return ofType(own, 'profile').flatMap(({ record }) => {
    if (record.method !== 'replica tape') return []
    if (record.tapeGross === undefined) return ['not computed: it is not said whether the film is in the readings']
    if (record.tapeGross === 'no') return ['read net of the film']
    const { film } = record
    if (!film) return ['not computed: the thickness of the film is missing']
    return (record.readings ?? []).flatMap(({ mark, reading }) =>
      reading.kind === 'number' && reading.unit === film.unit
        ? [
            `${mark}: ${showDecimal(reading)} − ${showDecimal(film)} = ${showExact({ numerator: BigInt(reading.digits) * 10n ** BigInt(film.scale) - BigInt(film.digits) * 10n ** BigInt(reading.scale), denominator: 10n ** BigInt(reading.scale + film.scale) }, Math.max(reading.scale, film.scale))} ${showUnit(film.unit)}`,
          ]
        : [],
    )
  })
}
