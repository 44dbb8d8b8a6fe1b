import { buildCms } from './build-cms'
import type { SigningCertificate, SigningIdentity } from './certificate'
import { askTimeStamp } from './time-stamp'

/** Signs a finished dossier. */
export type DossierSigner = {
  certificate: SigningCertificate
  /** The moment that the signature claims, real time. */
  signedAt: Date
  /** Whether each signature carries a time stamp of a service. */
  isStamped: boolean
  /** The signature (CMS in DER) over content with this SHA-256. */
  sign(contentSha256: Uint8Array): Promise<Uint8Array>
}

/** A signer with an identity; `timeStampUrl` names an RFC 3161 service, or null. */
export function dossierSigner(identity: SigningIdentity, timeStampUrl: string | null, signedAt: Date): DossierSigner {
  const stamp = timeStampUrl === null ? null : (sha256: Uint8Array) => askTimeStamp(timeStampUrl, sha256)
  return {
    certificate: identity.certificate,
    signedAt,
    isStamped: stamp !== null,
    sign: (contentSha256) => buildCms(contentSha256, identity, stamp),
  }
}
