import { measured } from '@/lib/domain/reading'
import { CURE_SERIES, PLIES, PRIMER } from './completions'
import { K, L1, QI, T1 } from './demo-people'
import { degC, grams, mm } from './demo-readings'
import { at, secondsAfter } from './demo-time'
import type { BodyInput } from './fact-script'
import type { OnRepair } from './steps-before'

type Numbered = OnRepair & { number: 'MD-0041' | 'MD-0042' }
/** One resin mix as given: masses in g, resin °C, mixed at, used by. */
export type MixFigures = {
  no: string
  resin: string
  hardener: string
  partA: string
  partB: string
  temp: string
  mixedAt: string
  usedBy: string
  mixedBy: string
}

/** Primer on the steel. */
export function recordPrimer({ hand, figures, number }: OnRepair & { number: keyof typeof PRIMER }): void {
  const { brushedAt, mass } = PRIMER[number]
  const when = at(figures.day, brushedAt)
  hand.record('14', when, T1, {
    type: 'primer',
    batch: 'batch:PR-357',
    mass: grams(mass),
    brushedAt: when,
    brushedBy: T1,
  })
}

/** The record of one resin mix. */
export function mixRecord(day: string, mix: MixFigures): BodyInput<'recorded'>['record'] {
  return {
    type: 'resin-mix',
    mixNo: mix.no,
    mixedBy: mix.mixedBy,
    partA: [{ batch: `batch:${mix.resin}`, amount: grams(mix.partA) }],
    partB: [{ batch: `batch:${mix.hardener}`, amount: grams(mix.partB) }],
    proportion: 'by mass',
    startedAt: at(day, mix.mixedAt),
    usedBy: at(day, mix.usedBy),
    resinTemp: degC(mix.temp),
    colourUniform: 'yes',
    scale: 'instrument:WB-09',
  }
}

/** The record of one ply by its row in the completions. */
export function plyRecord(
  { figures, number }: Numbered,
  plyNo: number,
): { record: BodyInput<'recorded'>['record']; endedAt: string } {
  const row = PLIES[number][plyNo - 1]
  if (!row) throw new RangeError(`Expected a ply of ${number}, received ${plyNo}`)
  const [mixNo, startedAt, endedAt, overlap, jointOffset] = row
  return {
    endedAt,
    record: {
      type: 'ply',
      plyNo,
      fabric: 'batch:FB-0616',
      mixNo,
      startedAt: at(figures.day, startedAt),
      endedAt: at(figures.day, endedAt),
      placedBy: T1,
      width: mm(figures.totalLength),
      startClock: ['12', '3', '6', '9'][plyNo % 4] ?? '12',
      overlap: mm(overlap),
      jointOffset: mm(jointOffset),
      tension: 'hand, firm',
      wetOut: 'yes',
      airRolled: 'yes',
    },
  }
}

/** Mixes and plies in the order of their entry. A ply whose entry came late is left out here and entered by its repair. */
export function layUp(on: Numbered, mixes: MixFigures[], skipPly?: number): void {
  const { hand, figures, number } = on
  const acts = [
    ...mixes.map((mix) => ({
      clock: mix.usedBy,
      act: () =>
        hand.record('14', at(figures.day, mix.mixedAt), mix.mixedBy, mixRecord(figures.day, mix), {
          enteredAt: at(figures.day, mix.usedBy),
        }),
    })),
    ...PLIES[number].flatMap((_, step) => {
      if (step + 1 === skipPly) return []
      const { record, endedAt } = plyRecord(on, step + 1)
      return [{ clock: endedAt, act: () => hand.record('14', at(figures.day, endedAt), T1, record) }]
    }),
    {
      clock: `${PLIES[number][0][2]}:20`,
      act: () => {
        const scope = { kind: 'up-to-step', step: 'first ply seen: lay the following plies' } as const
        const when = at(figures.day, `${PLIES[number][0][2]}:20`)
        hand.photo('14', when, QI, 'nth-ply', 'First ply wetted out', {
          kind: 'pipe',
          shows: 'ply',
          clock: figures.clock,
          note: 'ply 1',
        })
        return hand.release('14', secondsAfter(when, 20), 'inspector', QI, scope)
      },
    },
  ]
  for (const { act } of acts.sort((a, b) => a.clock.localeCompare(b.clock))) act()
}

/** Plies counted by two persons, photos of the end, signatures and releases; the client's representative attends. */
export function closeLayUp(
  { hand, figures }: Numbered,
  counts: [person: string, clock: string][],
  closedAt: string,
  performers: string[],
): void {
  for (const [person, clock] of counts) {
    const countedAt = at(figures.day, clock)
    hand.record('14', countedAt, person, {
      type: 'ply-count',
      plies: measured(figures.plies, 'plies'),
      countedBy: person,
      countedAt,
    })
  }
  const seen = at(figures.day, counts.at(-1)?.[1] ?? closedAt)
  hand.photo('14', secondsAfter(seen, 30), QI, 'end-joint', 'End joint of the last ply', {
    kind: 'pipe',
    shows: 'joint',
    clock: '9',
    note: 'offset',
  })
  hand.photo('14', secondsAfter(seen, 45), QI, 'last-ply', 'Last ply under release film', {
    kind: 'pipe',
    shows: 'film',
    clock: '12',
    note: `${figures.plies} plies`,
  })
  hand.close('14', at(figures.day, closedAt), {
    signs: [
      ...performers.map((person): [string, 'performed'] => [person, 'performed']),
      [L1, 'checked'],
      [QI, 'checked'],
      [K, 'witnessed'],
    ],
    submittedBy: T1,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
}

/** A probe's series, one reading an hour from the start, the last one at the end. */
export function probeSeries(name: keyof typeof CURE_SERIES, startedAt: string, endedAt: string) {
  const texts = CURE_SERIES[name].split(' ')
  return texts.map((text, step) => ({
    at: step === texts.length - 1 ? endedAt : secondsAfter(startedAt, step * 3600),
    reading: degC(text),
  }))
}
