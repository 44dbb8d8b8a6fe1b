import { openPackage } from '@/lib/server/commands/open-package'
import { answer } from '../../../../answer'
import { plainParam } from '../../../../plain-param'

type Params = { params: Promise<{ repair: string; revision: string }> }

/** The package of a repair: dossier, original photos, certificates and readings; of an issued revision, or of the record as it stands. */
export async function GET(_request: Request, { params }: Params): Promise<Response> {
  const { repair, revision } = await params
  return answer(async (actor) => {
    const opened = await openPackage(actor, { repair: plainParam(repair), revision })
    if (!opened.ok) return opened
    return new Response(opened.value.body, {
      headers: {
        'content-type': 'application/zip',
        'content-disposition': `attachment; filename="${opened.value.fileName}"`,
        'x-content-type-options': 'nosniff',
        'cache-control': 'private, no-store',
      },
    })
  })
}
