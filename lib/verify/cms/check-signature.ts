import { isSameBytes } from '@/lib/calc/merkle-tree'
import { digestOf } from '@/lib/evidence/digest'
import type { Ledger } from '../ledger'
import type { Certificate } from './certificate'
import { checkTimeStamp } from './check-time-stamp'
import { NotDer, readDer, TAG } from './read-der'
import { attributesOf, isAlgorithm, isNumber, OID, type SignedParts, takeApart } from './signed-parts'
import { verifySignature } from './verify-signature'

const PLACE = 'signature'
const FAULTS = {
  form: 'signature-form',
  certificates: 'signature-certificates',
  attributes: 'signature-attributes',
} as const
/** What the signed attributes of a dossier are, no more and no fewer. */
const ATTRIBUTES = [OID.contentType, OID.messageDigest, OID.signingCertificateV2]

/** The signer's certificate as the file has it, and the moment of its time stamp. */
export type Signed = { certificate: Certificate; stampedAt: string | null }

/**
 * Check the file's signature (CMS in DER) against the digest of all it covers: the one form that a dossier has, the certificate named, key and signature, and a time stamp in full.
 * Breaks: `signature-*`, `digest-differs`, `certificate-not-named`, `certificate-key`, `stamp-*`. Null when the form is not readable.
 * @throws NoWebCrypto @source lib/evidence/FORMAT.md section 5.5
 */
export async function checkSignature(
  der: Uint8Array,
  contentSha256: Uint8Array,
  ledger: Ledger,
): Promise<Signed | null> {
  const parts = readParts(der, ledger)
  if (!parts) return null
  const { certificate, signer, attributes } = parts
  const { key } = certificate
  const isForm =
    isNumber(parts.version, 1) &&
    isNumber(signer.version, 1) &&
    isAlgorithm(parts.digestAlgorithm, OID.sha256, 'none') &&
    isAlgorithm(signer.digestAlgorithm, OID.sha256, 'none') &&
    parts.content.parts.length === 1 &&
    parts.content.parts[0]?.tag === TAG.oid &&
    isSameBytes(parts.content.parts[0].bytes, DATA)
  if (!isForm) ledger.broken('signature-form', PLACE)
  if (!isSameBytes(signer.issuer.bytes, certificate.issuer) || !isSameBytes(signer.serial.bytes, certificate.serial))
    ledger.broken('certificate-not-named', PLACE)
  if (attributes.size !== ATTRIBUTES.length || ATTRIBUTES.some((one) => !attributes.has(one)))
    ledger.broken('signature-attributes', PLACE)
  const type = attributes.get(OID.contentType)
  if (!type || !isSameBytes(type.bytes, DATA)) ledger.broken('signature-attributes', PLACE)
  const digest = attributes.get(OID.messageDigest)
  if (digest?.tag !== TAG.octets || !isSameBytes(digest.content, contentSha256)) ledger.broken('digest-differs', 'file')
  if (!namesCertificate(parts)) ledger.broken('certificate-not-named', PLACE)
  const algorithm = key?.kind === 'rsa' ? [OID.rsaSha256, 'null' as const] : [OID.ecdsaSha256, 'none' as const]
  const isAllowed =
    key !== null && (key.kind === 'p256' || (key.kind === 'rsa' && key.bits >= 2048 && key.bits <= 8192))
  if (!isAllowed || !key) {
    ledger.broken('certificate-key', PLACE)
    return { certificate, stampedAt: null }
  }
  const [oid = '', parameter] = algorithm
  if (!isAlgorithm(signer.signatureAlgorithm, oid, parameter === 'null' ? 'null' : 'none'))
    ledger.broken('signature-form', PLACE)
  if (!(await verifySignature(key, 'SHA-256', parts.signedBytes, signer.signature)))
    ledger.broken('signature-false', PLACE)
  return { certificate, stampedAt: await checkUnsigned(parts, ledger) }
}

/** The identifier of plain data, as DER. */
const DATA = Uint8Array.of(0x06, 0x09, 0x2a, 0x86, 0x48, 0x86, 0xf7, 0x0d, 0x01, 0x07, 0x01)

function readParts(der: Uint8Array, ledger: Ledger): SignedParts | null {
  try {
    const parts = takeApart(readDer(der))
    if (typeof parts !== 'string') return parts
    ledger.broken(FAULTS[parts], PLACE)
  } catch (error) {
    if (!(error instanceof NotDer)) throw error
    ledger.broken('signature-not-der', PLACE)
  }
  return null
}

/** Whether signing-certificate-v2 is exactly the SHA-256 of the certificate, in its shortest writing. @source RFC 5035 */
function namesCertificate({ attributes, certificate }: SignedParts): boolean {
  const value = attributes.get(OID.signingCertificateV2)
  const [identifiers] = value?.parts ?? []
  const [identifier] = identifiers?.parts ?? []
  const [hash] = identifier?.parts ?? []
  const isForm =
    value?.parts.length === 1 &&
    identifiers?.parts.length === 1 &&
    identifier?.parts.length === 1 &&
    hash?.tag === TAG.octets
  return isForm && isSameBytes(hash.content, digestOf(certificate.der))
}

/** No unsigned attribute, or exactly one: a time stamp over the signature. */
async function checkUnsigned({ unsigned, signer }: SignedParts, ledger: Ledger): Promise<string | null> {
  if (unsigned === null) return null
  const attributes = attributesOf(unsigned)
  const token = attributes?.get(OID.timeStampToken)
  if (attributes?.size !== 1 || !token) {
    ledger.broken('signature-attributes', PLACE)
    return null
  }
  return checkTimeStamp(token, digestOf(signer.signature), ledger)
}
