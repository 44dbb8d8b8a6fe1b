import type { RepairState } from '../fold/repair-state'
import { type Measured, showReading, showReadingUnit } from '../reading'
import { defectInForce, designInForce } from './recorded-basis'

export type EnvelopeRow = {
  what: string
  found: string
  limit: string
  outcome: 'within' | 'outside' | 'not proven' | 'not judged'
}

/** As found against the design's envelope, with the verdict of the specification's criterion on each. Without such a criterion it is shown, not judged. */
export function envelopeRows(state: RepairState): EnvelopeRow[] {
  const found = defectInForce(state)
  const envelope = designInForce(state)?.record.envelope
  if (!found || !envelope) return []
  const { record: defect, attempt } = found
  const result = attempt.criteria.find((one) => one.criterion.rule.kind === 'design-envelope')
  const outcomeAt = (marks: readonly string[]): EnvelopeRow['outcome'] => {
    if (!result) return 'not judged'
    const findings = result.findings.filter((one) => one.mark !== undefined && marks.includes(one.mark))
    if (findings.some((one) => one.code === 'outside-envelope')) return 'outside'
    return findings.length > 0 ? 'not proven' : 'within'
  }
  const [first, last] = edgeStations(defect.grid.stations.map((one) => one.name))
  const edges = defect.wall.filter(({ mark }) => [first, last].includes(mark.slice(0, mark.lastIndexOf('-'))))
  const row = (mark: string, what: string, value: Measured, limit: string): EnvelopeRow => ({
    what,
    found: showReadingUnit(value),
    limit,
    outcome: outcomeAt([mark]),
  })
  return [
    row('hole axial', 'Hole along the pipe', defect.holeAxial, `≤ ${showReadingUnit(envelope.holeAxialMax)}`),
    row('hole hoop', 'Hole round the pipe', defect.holeHoop, `≤ ${showReadingUnit(envelope.holeHoopMax)}`),
    ...defect.diameters.map((one, at) =>
      row(
        `D${at + 1}`,
        `Outside diameter ${at + 1}`,
        one,
        `${showReading(envelope.diameterMin)} to ${showReadingUnit(envelope.diameterMax)}`,
      ),
    ),
    {
      what: `Wall at the ends, stations ${first} and ${last}`,
      found: edges.map((one) => showReading(one.reading)).join(' '),
      limit: `each ≥ ${showReadingUnit(envelope.minWallAtBandEdge)}`,
      outcome: outcomeAt([...edges.map((one) => one.mark), 'wall at the band edge']),
    },
  ]
}

function edgeStations(names: readonly string[]): [string, string] {
  return [names[0] ?? '', names.at(-1) ?? '']
}
