import type { Fact } from '@/lib/domain/facts/fact-kinds'
import { measured } from '@/lib/domain/reading'
import { K, L1, QI, QJ, S } from '@/lib/server/demo/demo-people'
import { chalkGrid, gridReadings } from '@/lib/server/demo/demo-readings'
import { at } from '@/lib/server/demo/demo-time'
import { type FactScript, startScript } from '@/lib/server/demo/fact-script'
import { describedPhotos } from '@/lib/server/demo/photo-drawing'
import { MD_0041 } from '@/lib/server/demo/repair-figures'
import { scriptRepair } from '@/lib/server/demo/repair-script'
import { FACTS } from './folded-demo'

/** The re-measured grid of MD-0041 with HD-05 on 06-06. */
export const REMEASURED = {
  '12': '80 79 80 80 79',
  '3': '78 79 79 79 78',
  '6': '76 77 75 76 77',
  '9': '79 78 79 79 79',
}

/** A script that goes on where the seed's streams end, so that no id is used twice. */
function continuedScript(): FactScript {
  const lengths = new Map<string, number>()
  for (const fact of FACTS) lengths.set(fact.stream, (lengths.get(fact.stream) ?? 0) + 1)
  return startScript(lengths)
}

/** The events of June: FP-118 recalled on 06-02, HD-03 found wrong on 06-04, MD-0041 measured again on 06-06. */
export function laterEvents(): Fact[] {
  const script = continuedScript()
  script.write({
    stream: 'person:pavo-lindmarsh',
    kind: 'qualification-recorded',
    at: at('05-30', '09:00'),
    by: S,
    body: {
      number: 'Q-131',
      task: 'applicator',
      geometries: ['straight'],
      validFrom: '2026-05-30',
      validTo: '2028-05-29',
    },
  })
  script.write({
    stream: 'batch:FP-118',
    kind: 'batch-recalled',
    at: at('06-02', '09:00'),
    by: S,
    body: { reason: 'Hardener of the kit under strength.', by: 'the maker', reference: 'RC-118' },
  })
  script.write({
    stream: 'batch:FP-118',
    kind: 'batch-quarantined',
    at: at('06-02', '09:10'),
    by: S,
    body: { reason: 'Recalled: kits left in store set apart.' },
  })
  const lastGood = FACTS.find(
    (fact) => fact.stream === 'instrument:HD-03' && fact.kind === 'check-made' && fact.body.coverage === 'full scale',
  )
  if (!lastGood) throw new Error('the demo lacks the full check of HD-03')
  const found = script.write({
    stream: 'instrument:HD-03',
    kind: 'found-wrong',
    at: at('06-04', '10:00'),
    by: QI,
    body: {
      error: measured('3', 'ShoreD'),
      how: 'Full scale check: reads 3 too high at the upper end; the daily block is mid scale.',
      lastGoodFullCheck: lastGood.id,
    },
  })
  script.write({
    stream: 'instrument:HD-03',
    kind: 'instrument-quarantined',
    at: at('06-04', '10:05'),
    by: QI,
    body: { reason: 'Reads 3 too high at the upper end.' },
  })
  const hand = scriptRepair(script, 'MD-0041', describedPhotos)
  hand.write('attempt-opened', at('06-06', '08:50'), QI, {
    points: ['16'],
    attempt: 2,
    reason: 'Measured again with HD-05: HD-03 was found wrong.',
  })
  const takenAt = at('06-06', '09:00')
  const again = hand.record(
    '16',
    takenAt,
    QI,
    {
      type: 'hardness',
      scale: 'ShoreD',
      grid: chalkGrid(MD_0041.stations),
      readings: gridReadings(REMEASURED, 'ShoreD'),
      takenAt,
      instrument: 'instrument:HD-05',
    },
    { attempt: 2 },
  )
  for (const [step, clock] of ['12', '3', '6', '9'].entries()) {
    hand.photo(
      '16',
      at('06-06', `09:0${step + 4}`),
      QI,
      'gauge-on-row',
      `HD-05 at C-${clock}`,
      { kind: 'dial', title: 'HD-05', value: 79, from: 0, to: 100, unit: 'Shore D', note: `C-${clock}` },
      { attempt: 2 },
    )
  }
  hand.close('16', at('06-06', '09:20'), {
    attempt: 2,
    signs: [
      [QI, 'measured'],
      [K, 'witnessed'],
    ],
    submittedBy: QI,
    releases: [
      ['crew', L1],
      ['inspector', QI],
    ],
  })
  hand.write('impact-decided', at('06-06', '09:30'), QJ, {
    cause: found.id,
    points: [
      { point: '04', attempt: 1 },
      { point: '16', attempt: 1 },
    ],
    decision: 're-measured',
    evidence: [again.id],
    reason: 'Full grid with HD-05: least 75, mean 78.30.',
  })
  return script.written.map((one) => one.fact)
}
