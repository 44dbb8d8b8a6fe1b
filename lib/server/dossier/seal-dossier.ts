import { type PersonId, Sha256, type StreamId } from '@/lib/domain/facts/fact'
import type { IssueState } from '@/lib/domain/fold/repair-state'
import type { Moment } from '@/lib/domain/time'
import type { DossierSeal, EarlierIssue } from '@/lib/dossier/dossier-seal'
import { parseLeaf } from '@/lib/evidence/leaf'
import { checkpointNow } from '@/lib/server/log/checkpoint-now'
import { LOG_KEY_STREAM, SIGNATURE_STREAM } from '@/lib/server/log/key-facts'
import { type EvidenceOfFact, loadEvidence } from '@/lib/server/log/load-evidence'
import { consistencyProof, inclusionProofs } from '@/lib/server/log/proofs'
import { takeSigningCertificate } from '@/lib/server/log/take-signing-certificate'
import type { Store, TenantId } from '@/lib/server/store/store'
import { checkAddress } from './check-address'
import type { GatheredDossier } from './gather-dossier'
import { loadSigner } from './load-signer'

/**
 * Take a checkpoint over everything that was gathered, and the evidence for it: bytes of the facts, proofs, who signs. The certificate that signs is named in the log first.
 * `moved` when a stream got another fact after it was gathered: gather anew. `receivedAt` is for the demo's seed alone.
 * @throws LogBroken, StoredFactBroken, CertificateUnusable
 */
export async function sealDossier(
  store: Store,
  tenant: TenantId,
  { input, heads, likeness, holder }: GatheredDossier,
  actor: PersonId,
  receivedAt?: Moment,
): Promise<DossierSeal | 'moved'> {
  const signer = await loadSigner(store, holder)
  const { sha256, subject, notBefore, notAfter, isMadeHere } = signer.certificate
  const named = {
    certificateSha256: Sha256.parse(sha256),
    subject,
    notBefore,
    notAfter,
    madeHere: isMadeHere,
    reason: isMadeHere ? 'made by this store, which signs with it' : 'set by who runs this store',
  }
  await takeSigningCertificate(store, tenant, actor, named, receivedAt)
  const checkpoint = await checkpointNow(store, tenant, actor, receivedAt)
  const streams = [...heads.map((one) => one.stream), LOG_KEY_STREAM, SIGNATURE_STREAM]
  const evidence = await loadEvidence(store, tenant, streams, checkpoint.size)
  const lengths = lengthsOf(evidence)
  if (heads.some(({ stream, length }) => lengths.get(stream) !== length)) return 'moved'
  const proofs = await inclusionProofs(
    store,
    tenant,
    evidence.map((one) => one.leaf),
    checkpoint.size,
  )
  return {
    tenant,
    checkpoint,
    facts: evidence.map(({ leaf, leafBytes, factBytes }, at) => ({
      index: leaf,
      leafBytes,
      factBytes,
      proof: proofs[at]?.proof ?? [],
    })),
    streams: [...lengths].map(([stream, length]) => ({ stream, length })),
    likeness,
    earlier: await Promise.all(input.state.issues.map((one) => earlierIssue(store, tenant, one, checkpoint.size))),
    signer,
    checkAddress: checkAddress(),
  }
}

function lengthsOf(evidence: readonly EvidenceOfFact[]): Map<StreamId, number> {
  const lengths = new Map<StreamId, number>()
  for (const { leafBytes } of evidence) {
    const leaf = parseLeaf(leafBytes)
    if (!leaf.ok) throw new Error(`A leaf of the log is none: ${leaf.error.code}`)
    const { stream } = leaf.value
    lengths.set(stream, (lengths.get(stream) ?? 0) + 1)
  }
  return lengths
}

async function earlierIssue(store: Store, tenant: TenantId, { fact }: IssueState, size: number): Promise<EarlierIssue> {
  const { revision, sha256, log } = fact.body
  if (!log) return { revision, sha256, size: null, root: null, consistency: null }
  return { revision, sha256, ...log, consistency: await consistencyProof(store, tenant, log.size, size) }
}
