import { openReviewDossier } from '@/lib/server/commands/open-dossier'
import { answer } from '../../../answer'
import { plainParam } from '../../../plain-param'
import { sendFile } from '../../send-file'

/** A copy for review of a repair's dossier as it stands now. */
export async function GET(_request: Request, { params }: { params: Promise<{ repair: string }> }): Promise<Response> {
  const { repair } = await params
  return answer(async (actor) => sendFile(await openReviewDossier(actor, { repair: plainParam(repair) }), false))
}
