import { createPrivateKey } from 'node:crypto'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { DossierSeal } from '@/lib/dossier/dossier-seal'
import { signingIdentity } from '@/lib/dossier/sign/certificate'
import { dossierSigner } from '@/lib/dossier/sign/dossier-signer'
import { makeCertificate } from '@/lib/dossier/sign/make-certificate'
import { bytesOfFact, digestOfFact } from '@/lib/evidence/bytes-of-fact'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'

/** A seal of the size that a log of a million facts gives: every fact with its leaf and a proof of twenty hashes, which here prove nothing. */
export async function sealForBench(facts: readonly Fact[]): Promise<DossierSeal> {
  const now = new Date()
  const made = await makeCertificate('Bench', now)
  const key = createPrivateKey({ key: Buffer.from(made.key), format: 'der', type: 'pkcs8' })
  const hash = Buffer.alloc(32, 7).toString('base64')
  return {
    tenant: 'bench',
    checkpoint: { origin: 'underwrap/0123456789abcdef/bench', size: 1_000_000, root: hash, text: 'bench\n', vkey: 'v' },
    facts: facts.map((fact, index) => ({
      index,
      leafBytes: canonicalBytes({ v: 1, stream: fact.stream, position: index + 1, sha256: digestOfFact(fact) }),
      factBytes: bytesOfFact(fact),
      proof: Array.from({ length: 20 }, () => hash),
    })),
    streams: [...new Set(facts.map((fact) => fact.stream))].map((stream) => ({ stream, length: 1 })),
    likeness: [],
    earlier: [],
    signer: dossierSigner(signingIdentity(made.certificate, key, true, now), null, now),
    checkAddress: 'http://localhost:3000/check',
  }
}
