import { createHash, createPublicKey, type KeyObject, X509Certificate } from 'node:crypto'
import { derOf, parseDer } from './der'

/** The certificate that signs dossiers, as the record names it. Moments are RFC 3339 in UTC. */
export type SigningCertificate = {
  der: Uint8Array
  /** SHA-256 of the DER, lower-case hex. */
  sha256: string
  /** The distinguished name on one line. */
  subject: string
  notBefore: string
  notAfter: string
  /** Made by this store itself: it proves that nothing changed, not who signed. */
  isMadeHere: boolean
}

/** A certificate and the key that belongs to it. */
export type SigningIdentity = { certificate: SigningCertificate; key: KeyObject }

/** The certificate or its key cannot be used; the message is one plain line. */
export class CertificateUnusable extends Error {
  readonly code = 'certificate-unusable'
}

/**
 * A certificate with its key, as it is used for signing.
 * @throws CertificateUnusable when the key is not the certificate's, is neither RSA of 2048 bits or more nor ECDSA P-256, or the certificate is not valid at `now`
 */
export function signingIdentity(der: Uint8Array, key: KeyObject, isMadeHere: boolean, now: Date): SigningIdentity {
  const read = new X509Certificate(der)
  const subject = read.subject.split('\n').reverse().join(', ')
  if (!Buffer.from(derOf(parseDer(der))).equals(der))
    throw new CertificateUnusable(`The certificate ${subject} is not written in DER.`)
  if (!read.checkPrivateKey(key))
    throw new CertificateUnusable(`The key does not belong to the certificate ${subject}.`)
  const fault = faultOfKey(createPublicKey(key))
  if (fault) throw new CertificateUnusable(`The certificate ${subject} cannot sign: ${fault}.`)
  const [notBefore, notAfter] = [new Date(read.validFrom), new Date(read.validTo)]
  if (now < notBefore || now > notAfter)
    throw new CertificateUnusable(
      `The certificate ${subject} is valid from ${secondsOf(notBefore)} to ${secondsOf(notAfter)} and cannot sign now.`,
    )
  return {
    key,
    certificate: {
      der,
      sha256: createHash('sha256').update(der).digest('hex'),
      subject,
      notBefore: secondsOf(notBefore),
      notAfter: secondsOf(notAfter),
      isMadeHere,
    },
  }
}

function faultOfKey(key: KeyObject): string | null {
  const details = key.asymmetricKeyDetails
  if (key.asymmetricKeyType === 'rsa')
    return (details?.modulusLength ?? 0) >= 2048 ? null : 'its RSA key has less than 2048 bits'
  if (key.asymmetricKeyType === 'ec')
    return details?.namedCurve === 'prime256v1' ? null : 'its curve is another than P-256'
  return 'its key is neither RSA nor ECDSA P-256'
}

function secondsOf(moment: Date): string {
  return `${moment.toISOString().slice(0, 19)}+00:00`
}
