import type { PersonId } from '@/lib/domain/facts/fact'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import type { Moment } from '@/lib/domain/time'
import type { Store, TenantId } from '@/lib/server/store/store'
import { appendKeyFact, loadSigningCertificate } from './key-facts'

/**
 * Say in the log which certificate signs dossiers from now on. Nothing is appended when it is the one already named. True when it was.
 * `receivedAt` is for the demo's seed alone. @throws LogBroken `tenant-unknown`
 */
export async function takeSigningCertificate(
  store: Store,
  tenant: TenantId,
  actor: PersonId,
  certificate: BodyOf<'signing-certificate-taken'>,
  receivedAt?: Moment,
): Promise<boolean> {
  const { body, length } = await loadSigningCertificate(store, tenant)
  if (body?.certificateSha256 === certificate.certificateSha256) return false
  const fact = { kind: 'signing-certificate-taken' as const, body: certificate, actor, length, receivedAt }
  return (
    (await appendKeyFact(store, tenant, fact)) || takeSigningCertificate(store, tenant, actor, certificate, receivedAt)
  )
}
