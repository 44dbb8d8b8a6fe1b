import { readFile } from 'node:fs/promises'
import { CertificateUnusable, type SigningIdentity } from '@/lib/dossier/sign/certificate'
import { type DossierSigner, dossierSigner } from '@/lib/dossier/sign/dossier-signer'
import { readP12 } from '@/lib/dossier/sign/read-p12'
import type { Store } from '@/lib/server/store/store'
import type { Tenant } from '@/lib/server/store/tenants'
import { loadOwnCertificate } from './own-certificate'

/**
 * Who signs the dossiers of an organisation: the certificate of the PKCS 12 file that `UNDERWRAP_P12` names (its password in `UNDERWRAP_P12_PASSWORD`), else one that this store
 * made itself, once for each organisation. With `UNDERWRAP_TSA` each signature carries a time stamp of that service. Certificates are judged by real time.
 * @throws CertificateUnusable
 */
export async function loadSigner(store: Store, organisation: Tenant): Promise<DossierSigner> {
  const now = new Date()
  const identity = process.env.UNDERWRAP_P12
    ? await ofFile(process.env.UNDERWRAP_P12, now)
    : await loadOwnCertificate(store.dataDir, organisation, now)
  return dossierSigner(identity, timeStampAddress(), now)
}

async function ofFile(path: string, now: Date): Promise<SigningIdentity> {
  const bytes = await readFile(/*turbopackIgnore: true*/ path).catch((cause: NodeJS.ErrnoException) => {
    throw new CertificateUnusable(`The certificate ${path} cannot be read (${cause.code}).`, { cause })
  })
  return readP12(bytes, process.env.UNDERWRAP_P12_PASSWORD ?? '', now)
}

function timeStampAddress(): string | null {
  const address = process.env.UNDERWRAP_TSA
  if (!address) return null
  if (!/^https?:\/\/\S+$/.test(address))
    throw new CertificateUnusable(`UNDERWRAP_TSA names no address of a time-stamp service: ${address}`)
  return address
}
