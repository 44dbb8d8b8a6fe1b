import type { StreamId } from '@/lib/domain/facts/fact'
import { streamName, streamOf } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { loadStream } from '@/lib/server/store/load-stream'
import type { Store, TenantId } from '@/lib/server/store/store'

/** An issued dossier as stored: its digest names the object in the photo store. */
export type IssuedFile = { sha256: string; sizeBytes: number; fileName: string }

/** The stored file of one issued revision of a repair; null when that revision was never issued in this tenant. */
export async function issuedFile(
  store: Store,
  tenant: TenantId,
  repair: StreamId,
  revision: number,
): Promise<IssuedFile | null> {
  const { facts } = await loadStream(store, tenant, streamOf('dossier', streamName(repair)))
  const issue = ofKind(facts, 'dossier-issued').find(
    (fact) => fact.body.repair === repair && fact.body.revision === revision,
  )
  return issue
    ? {
        sha256: issue.body.sha256,
        sizeBytes: issue.body.sizeBytes,
        fileName: `${streamName(repair)}-rev-${revision}.pdf`,
      }
    : null
}
