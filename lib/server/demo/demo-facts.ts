import { type FactScript, inOrderOfReceipt, type ScriptedFact, startScript } from './fact-script'
import { scriptInstrumentsAndBatches, scriptStoreInMay } from './instruments-and-batches'
import { scriptNcr0008 } from './ncr-0008-0009'
import { scriptPeopleAndProject } from './people-and-project'
import { describedPhotos, type PhotoBook } from './photo-drawing'
import { scriptRepair0041 } from './repair-0041'
import { scriptRepair0042 } from './repair-0042'
import { scriptRepair0043 } from './repair-0043'
import { scriptRepair0044 } from './repair-0044'
import { scriptSpecificationsAndPlans } from './specifications-and-plans'

/**
 * Every fact of the demo until its start at 2026-05-29T08:00+01:00, in the order of receipt, but the issues of dossiers, which are really built when
 * it is seeded. Pure: the same facts on every run. Without a photo book the photos' digests are those of their descriptions.
 */
export function demoFacts(photos: PhotoBook = describedPhotos): { facts: ScriptedFact[] } {
  const script: FactScript = startScript()
  scriptPeopleAndProject(script)
  scriptSpecificationsAndPlans(script)
  scriptInstrumentsAndBatches(script)
  scriptRepair0041(script, photos)
  scriptRepair0044(script, photos)
  scriptRepair0042(script, photos)
  scriptRepair0043(script, photos)
  scriptStoreInMay(script)
  scriptNcr0008(script, { evidence: secondMixOf0042(script) })
  return { facts: inOrderOfReceipt(script.written) }
}

/** The record of M2 of MD-0042, which T2 mixed. */
function secondMixOf0042(script: FactScript) {
  return script.written.flatMap(({ fact }) =>
    fact.stream === 'repair:MD-0042' &&
    fact.kind === 'recorded' &&
    fact.body.record.type === 'resin-mix' &&
    fact.body.record.mixNo === 'M2'
      ? [fact.id]
      : [],
  )
}
