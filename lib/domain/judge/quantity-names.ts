/**
 * The names that a specification may cite. A quantity is read by `each`, `mean` and `count`; an event by `window`; a flag by `yes` and `no`.
 * A test holds the records to these tables: no record yields a name that is not here.
 */

/** Quantities: what is read, its unit as read, and its marks. */
export const QUANTITIES = {
  'hole-axial': 'length of the hole along the pipe, mm',
  'hole-hoop': 'length of the hole round the pipe, mm',
  'defect-length': 'length of the defect, mm',
  wall: 'wall by station and clock position, mm',
  diameter: 'outside diameter as measured, mm; marks D1, D2',
  girth: 'girth as measured, mm; marks G1, G2',
  'pressure-at-start': 'pressure when the work began, MPa',
  salts: 'soluble salts, mg/m²',
  'dust-class': 'dust class',
  'prepared-length': 'prepared length each side, mm; marks left, right',
  profile: 'height of the surface profile, µm',
  'air-temp': 'air, °C',
  humidity: 'relative humidity, %',
  'steel-temp': 'steel, °C; mark is the place: 6 o’clock',
  'dew-point': 'dew point computed from air and humidity, °C',
  'dew-margin': 'each steel reading over the dew point, K; mark is the place: 6 o’clock',
  'arrest-pressure': 'pressure when the leak was arrested, MPa',
  'plate-thickness': 'plate under the band, mm',
  'band-tail': 'tail of the band, mm',
  'watch-pressure': 'pressure during the watch, MPa',
  'filler-mix-mass': 'mass of one filler mix, A + B, g; mark is the mix',
  'resin-mix-mass': 'mass of one resin mix, A + B, g; mark is the mix',
  'resin-temp': 'resin at mixing, °C; mark is the mix',
  'filler-over-hole': 'filler over the hole, after - before, mm',
  'filler-on-ring': 'filler at every other mark, after - before, mm',
  'filler-length': 'length covered by filler, mm',
  'filler-girth': 'girth covered by filler, mm',
  'filler-hardness': 'hardness of the filler',
  'ply-overlap': 'overlap of a ply, mm; mark is the ply',
  'joint-offset': 'offset of end joints, mm; mark is the ply',
  'ply-width': 'width of a ply, mm; mark is the ply',
  'plies-counted': 'plies counted; mark is the person',
  'soak-seconds': 'soak of a roll, s; mark is the roll',
  'soak-water-temp': 'water of a roll, °C; mark is the roll',
  'wrap-surface-temp': 'surface under a roll, °C; mark is the roll',
  'tape-overlap': 'overlap of the tape from width and pitch, %; marks P1, P2',
  'tape-passes': 'passes of the tape',
  'tape-start-length': 'start of the tape before the leak, mm',
  'tape-end-length': 'end of the tape after the leak, mm',
  'cure-surface-temp': 'surface during cure, °C; mark is the probe',
  'probe-temp': 'the same readings as cure-surface-temp',
  hardness: 'hardness of the laminate by station and clock position',
  'hardness-temp': 'temperature at the hardness test, °C',
  'laminate-thickness': 'laminate by station and clock position, mm',
  'finding-size': 'size of a finding, mm; mark is its place',
  'total-length': 'length of the wrap as built, mm',
  taper: 'taper each side, mm; marks left, right',
  'wrap-offset': 'middle of the wrap from the leak, mm',
  'test-pressure': 'each reading of the pressure test, MPa; mark is the clock time',
  'test-steel-temp': 'steel during the pressure test, °C',
  'life-years': 'life stated, yr',
  'wall-beyond-ends': 'wall beyond the ends in service, mm',
  'in-service-pressure': 'pressure at an in-service inspection, MPa',
  'in-service-temp': 'temperature at an in-service inspection, °C',
  'removal-wall': 'wall after removal, mm',
} as const
export type QuantityName = keyof typeof QUANTITIES

/** Events. `first-` takes the earliest, `last-` the latest of its kind; other events the earliest after the start. */
export const EVENTS = {
  'permit-from': 'permit valid from',
  'permit-to': 'permit valid to',
  'work-stopped': 'work stopped',
  'work-resumed': 'work resumed',
  'prep-finished': 'preparation finished',
  'cleanliness-checked': 'cleanliness looked at',
  'profile-taken': 'profile read',
  'climate-taken': 'climate read',
  'pre-wrap-checked': 'pre-wrap re-check',
  'knead-start': 'kneading began',
  'knead-end': 'kneading ended',
  'plug-pressed': 'plug pressed on',
  'band-tight': 'band tight',
  'plug-judged-hard': 'plug judged hard',
  'arrest-placed': 'leak arrest in place (band tight, or placed)',
  'watch-start': 'watch began',
  'watch-end': 'watch ended',
  'drip-seen': 'drip seen during the watch',
  'weep-seen': 'weep seen',
  'filler-mix-start': 'filler mix began',
  'filler-mix-end': 'filler mix ended',
  'filler-mix-used': 'filler mix used up',
  'filler-placed': 'filler placed',
  'filler-measured': 'filler measured',
  'filler-hardness-taken': 'filler hardness read',
  'first-primer': 'primer brushed, first',
  'first-resin': 'resin mix began, first',
  'first-wrap-resin': 'earliest of primer brushed, resin mix begun, tape soaked',
  'resin-mix-start': 'resin mix began',
  'resin-mix-used': 'resin mix used up',
  'first-ply': 'first ply or roll began',
  'last-ply': 'last ply or roll ended',
  'soak-start': 'tape soak began',
  'cure-start': 'cure began',
  'cure-end': 'cure ended',
  'hardness-taken': 'hardness read',
  'thickness-taken': 'thickness read',
  'visual-seen': 'looked at and tapped',
  'test-start': 'first reading of the pressure test',
  'test-end': 'last reading of the pressure test',
  'handed-over': 'handed over',
} as const
export type EventName = keyof typeof EVENTS

/** Yes/no statements. */
export const FLAGS = {
  'spark-restricted': 'area restricts sparks',
  'oil-free': 'free of oil',
  'certificate-matches': 'certificate matches the batch',
  'system-qualified': 'system as qualified',
  reswept: 're-swept and wiped',
  dry: 'dry',
  'stations-marked': 'stations marked',
  'free-of-flash-rust': 'free of flash rust',
  'one-colour': 'kneaded to one colour',
  'plug-over-hole': 'plug sits over the hole',
  'surplus-cut': 'surplus cut off',
  'left-inside': 'left inside the repair',
  'non-sparking-asked': 'area asks for non-sparking tools',
  'non-sparking-tools': 'non-sparking tools used',
  'wipe-dry': 'white wipe dry',
  'drip-seen': 'a drip was seen',
  'colour-uniform': 'colour of the mix uniform',
  smooth: 'filler smooth, no step',
  'no-weep': 'no weep',
  'wet-out': 'ply wetted out',
  'air-rolled': 'air rolled out',
  'sealed-until-use': 'roll sealed until use',
  'tension-kept': 'tension kept',
  squeezed: 'squeezed until wet through',
  'no-gap': 'no gap between rolls',
  'roll-used-up': 'roll used up',
  'cure-interrupted': 'cure interrupted',
  'post-cure': 'post-cure',
  'tap-tested': 'tap tested',
  'no-findings': 'nothing found',
  'no-leak': 'no leak on walk-down',
  'label-fixed': 'label fixed',
  'label-readable': 'label readable in place',
  weep: 'weep seen in service',
  'colour-change': 'colour changed',
  impact: 'impact seen',
  'pipe-touched': 'pipe touched by a cut',
  'pried-in-halves': 'prised off in halves',
} as const
export type FlagName = keyof typeof FLAGS

/** A flag that is demanded only where another flag says yes. */
export const DEMANDED_BY: Partial<Record<string, FlagName>> = { 'non-sparking-tools': 'non-sparking-asked' }

/** Events that spoil a watch between its start and its end. */
export const SPOILED_BY: Partial<Record<string, readonly EventName[]>> = { 'watch-start': ['drip-seen', 'weep-seen'] }

const MEAN_PLACES: Partial<Record<string, number>> = {
  hardness: 2,
  'filler-hardness': 1,
  'laminate-thickness': 2,
  profile: 1,
}

/** Decimal places that a mean of a quantity is shown with: its own, or one more than the finest reading has. */
export function meanPlaces(quantity: string, finestScale: number): number {
  return MEAN_PLACES[quantity] ?? finestScale + 1
}

const COMPUTED_PLACES: Partial<Record<string, number>> = { 'dew-margin': 1, 'dew-point': 1, 'tape-overlap': 1 }

/** Decimal places that a computed quantity is shown with; null for a quantity shown with its digits as recorded. */
export function computedPlaces(quantity: string): number | null {
  return COMPUTED_PLACES[quantity] ?? null
}
