import { type FactScript, inOrderOfReceipt, type ScriptedFact, startScript } from './fact-script'
import { scriptInstrumentsAndBatches, scriptStoreInMay } from './instruments-and-batches'
import { scriptPeopleAndProject } from './people-and-project'
import { describedPhotos, type PhotoBook } from './photo-drawing'
import { scriptRepair0041 } from './repair-0041'
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
  scriptStoreInMay(script)
  return { facts: inOrderOfReceipt(script.written) }
}
