import { openIssuedDossier } from '@/lib/server/commands/open-dossier'
import { answer } from '../../../answer'
import { plainParam } from '../../../plain-param'
import { sendFile } from '../../send-file'

type Params = { params: Promise<{ repair: string; revision: string }> }

/** An issued revision of a repair's dossier, byte for byte as frozen. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const { repair, revision } = await params
  return answer(async (actor) =>
    sendFile(
      await openIssuedDossier(actor, { repair: plainParam(repair), revision: revision.replace(/\.pdf$/, '') }),
      true,
    ),
  )
}
