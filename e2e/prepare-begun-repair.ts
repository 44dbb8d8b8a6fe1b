import { ADMIN } from '@/lib/server/demo/demo-people'
import { at } from '@/lib/server/demo/demo-time'
import type { FactScript } from '@/lib/server/demo/fact-script'
import { describedPhotos } from '@/lib/server/demo/photo-drawing'
import { MD_0043 } from '@/lib/server/demo/repair-figures'
import { scriptRepair } from '@/lib/server/demo/repair-script'
import { openRepair, stepAssessment, stepPermit } from '@/lib/server/demo/steps-before'
import { stepInstruments } from '@/lib/server/demo/steps-instruments'
import { stepMaterials } from '@/lib/server/demo/steps-materials'

/** A client's representative without an account: signs in person. */
export const IN_PERSON = { id: 'alda-brennock', name: 'Alda Brennock' } as const

/** MD-0043 with points 01 to 04 released, so that point 05 is open; and a client's representative who signs in person. */
export function scriptBegunRepair(script: FactScript): void {
  script.write({
    stream: `person:${IN_PERSON.id}`,
    kind: 'person-registered',
    at: at('04-16', '09:00'),
    by: ADMIN,
    body: { name: IN_PERSON.name, party: 'owner', title: 'Client’s representative' },
  })
  script.write({
    stream: 'project:QDM-SHAFT-2',
    kind: 'role-granted',
    at: at('04-16', '09:30'),
    by: ADMIN,
    body: { person: IN_PERSON.id, role: 'client', approve: false, from: '2026-04-16' },
  })
  const on = { hand: scriptRepair(script, 'MD-0043', describedPhotos), figures: MD_0043, number: 'MD-0043' } as const
  openRepair(on)
  stepAssessment(on)
  stepPermit(on)
  stepMaterials(on, ['RS-901', 'HB-2291', 'FP-118', 'PR-357'])
  stepInstruments(on, ['TH-12', 'SP-07', 'ST-04', 'HD-05', 'LG-06', 'WB-09', 'PG-21', 'PG-22', 'SM-02', 'CL-08'], {
    refused: [{ id: 'TH-11', reason: 'Certificate C-3188 ended on 2026-05-24.' }],
  })
}
