import { createPrivateKey } from 'node:crypto'
import { buildDossier } from '@/lib/dossier/build-dossier'
import type { DossierSeal } from '@/lib/dossier/dossier-seal'
import { type SigningIdentity, signingIdentity } from '@/lib/dossier/sign/certificate'
import { dossierSigner } from '@/lib/dossier/sign/dossier-signer'
import { makeCertificate } from '@/lib/dossier/sign/make-certificate'
import { inputByHand } from './input-by-hand'
import { storeOf } from './jpeg-for-tests'

const NOW = new Date('2026-06-01T10:00:00Z')
const INPUT = inputByHand()

/** A fresh self-made certificate with its key. */
export async function madeIdentity(): Promise<SigningIdentity> {
  const { certificate, key } = await makeCertificate('Plumbline-and-Thrice Inspection', NOW)
  return signingIdentity(
    certificate,
    createPrivateKey({ key: Buffer.from(key), format: 'der', type: 'pkcs8' }),
    true,
    NOW,
  )
}

/** A dossier by hand under a signer; what it attaches is of no account here. */
export async function signedFile(identity: SigningIdentity, url: string | null, path: string): Promise<string> {
  const seal: DossierSeal = {
    tenant: 'tenant-a',
    checkpoint: {
      origin: 'underwrap/0123456789abcdef/tenant-a',
      size: 1,
      root: Buffer.alloc(32, 7).toString('base64'),
      text: 'a\n',
      vkey: 'v',
    },
    facts: [],
    streams: [],
    likeness: [],
    earlier: [],
    signer: dossierSigner(identity, url, NOW),
    checkAddress: 'https://record.example/check',
  }
  await buildDossier({ ...INPUT, seal }, storeOf({}), path)
  return path
}
