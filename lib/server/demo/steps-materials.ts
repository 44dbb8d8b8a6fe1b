import { COMPLETIONS } from './completions'
import { L1, QI, S } from './demo-people'
import { degC } from './demo-readings'
import { batchRow } from './demo-store-tables'
import { at, secondsAfter } from './demo-time'
import type { BodyInput } from './fact-script'
import type { OnRepair } from './steps-before'

/** Point 03: materials taken, and refused with a reason. */
export function stepMaterials(
  { hand, figures, number }: OnRepair,
  taken: string[],
  refused: { batch: string; reason: string }[] = [],
): void {
  const { materials } = COMPLETIONS[number]
  const seen = at(figures.day, materials.at)
  const line = (id: string): Omit<MaterialLine, 'decision'> => {
    const { role, label } = batchRow(id)
    return {
      batch: `batch:${id}`,
      role,
      packageState: 'sound',
      labelRead: label ? 'scanned' : 'typed',
      ...(label ? { labelText: label } : {}),
      certificateMatches: 'yes',
      systemQualified: 'yes',
      storedMin: degC('14.2'),
      storedMax: degC('21.6'),
    }
  }
  hand.record('03', seen, S, {
    type: 'materials',
    plannedUseOn: `2026-${figures.day}`,
    lines: [
      ...taken.map((id): MaterialLine => ({ ...line(id), decision: 'taken' })),
      ...refused.map(({ batch, reason }): MaterialLine => ({ ...line(batch), decision: 'refused', reason })),
    ],
  })
  const shown = batchRow(taken[0] ?? '')
  hand.photo('03', secondsAfter(seen, 90), S, 'package-label', `Label of ${shown.id}`, {
    kind: 'package',
    colour: number,
    lines: [shown.product, shown.id, shown.label ?? '', `expiry ${shown.expiresOn ?? 'none'}`],
  })
  hand.close('03', at(figures.day, materials.closedAt), {
    signs: [
      [S, 'performed'],
      [QI, 'witnessed'],
    ],
    submittedBy: S,
    releases: [['crew', L1]],
  })
}

type MaterialLine = Extract<BodyInput<'recorded'>['record'], { type: 'materials' }>['lines'][number]
