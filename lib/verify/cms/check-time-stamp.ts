import { sha1 } from '@noble/hashes/legacy.js'
import { sha256, sha384, sha512 } from '@noble/hashes/sha2.js'
import { isSameBytes } from '@/lib/calc/merkle-tree'
import type { Ledger } from '../ledger'
import { type Der, hasParts, NotDer, oidOf, readDer, TAG } from './read-der'
import { isAlgorithm, isNumber, OID, type SignedParts, takeApart } from './signed-parts'
import { type DigestName, verifySignature } from './verify-signature'

const PLACE = 'time stamp'
type Digest = { name: DigestName; of(bytes: Uint8Array): Uint8Array; ecdsa: string }
const DIGESTS: Readonly<Record<string, Digest>> = {
  [OID.sha256]: { name: 'SHA-256', of: sha256, ecdsa: OID.ecdsaSha256 },
  [OID.sha384]: { name: 'SHA-384', of: sha384, ecdsa: OID.ecdsaSha384 },
  [OID.sha512]: { name: 'SHA-512', of: sha512, ecdsa: OID.ecdsaSha512 },
}

/**
 * Check a time-stamp token in full: one certificate, named by the signed attributes; its signature; the digest that it stamps. The signature algorithm of an RSA key must be
 * written as rsaEncryption: it is not signed, and a second spelling would let a byte change unseen.
 * Breaks: `stamp-malformed`, `stamp-certificate`, `stamp-imprint`, `stamp-false`.
 * @returns the stamped moment in UTC as the token says it @throws NoWebCrypto @source RFC 3161 section 2.4.2, RFC 5652
 */
export async function checkTimeStamp(token: Der, imprint: Uint8Array, ledger: Ledger): Promise<string | null> {
  const parts = takeApart(token)
  if (typeof parts === 'string') {
    ledger.broken(parts === 'certificates' ? 'stamp-certificate' : 'stamp-malformed', PLACE)
    return null
  }
  const { signer, attributes, certificate } = parts
  const digest = DIGESTS[oidOf(signer.digestAlgorithm.parts[0])]
  const info = infoOf(parts)
  if (!digest || !info || !isForm(parts)) {
    ledger.broken('stamp-malformed', PLACE)
    return null
  }
  if (!isSameBytes(info.imprint, imprint)) ledger.broken('stamp-imprint', PLACE)
  const stated = attributes.get(OID.messageDigest)
  if (stated?.tag !== TAG.octets || !isSameBytes(stated.content, digest.of(info.bytes)))
    ledger.broken('stamp-false', PLACE)
  const isNamed =
    isSameBytes(signer.issuer.bytes, certificate.issuer) &&
    isSameBytes(signer.serial.bytes, certificate.serial) &&
    namesCertificate(parts)
  if (!isNamed) ledger.broken('stamp-certificate', PLACE)
  const { key } = certificate
  const isAllowed = key !== null && (key.kind !== 'rsa' || (key.bits >= 2048 && key.bits <= 8192))
  const isAlgorithmOf =
    key?.kind === 'rsa'
      ? isAlgorithm(signer.signatureAlgorithm, OID.rsa, 'null')
      : isAlgorithm(signer.signatureAlgorithm, digest.ecdsa, 'none')
  if (!isAllowed || !key || !isAlgorithmOf) ledger.broken('stamp-malformed', PLACE)
  else if (!(await verifySignature(key, digest.name, parts.signedBytes, signer.signature)))
    ledger.broken('stamp-false', PLACE)
  return info.moment
}

function isForm({ version, digestAlgorithm, signer, attributes, unsigned }: SignedParts): boolean {
  const type = attributes.get(OID.contentType)
  return (
    isNumber(version, 3) &&
    isNumber(signer.version, 1) &&
    unsigned === null &&
    isAlgorithm(digestAlgorithm, oidOf(signer.digestAlgorithm.parts[0]), 'either') &&
    isAlgorithm(signer.digestAlgorithm, oidOf(signer.digestAlgorithm.parts[0]), 'either') &&
    oidOf(type) === OID.timeStampInfo
  )
}

/** What was stamped and when. The imprint must be a SHA-256. */
function infoOf({ content }: SignedParts): { bytes: Uint8Array; imprint: Uint8Array; moment: string } | null {
  const [type, wrapped] = content.parts
  const [octets] = wrapped?.parts ?? []
  const isWrapped = hasParts(content, TAG.sequence, [TAG.oid, TAG.context0]) && wrapped?.parts.length === 1
  if (!isWrapped || oidOf(type) !== OID.timeStampInfo || octets?.tag !== TAG.octets) return null
  try {
    const { parts } = readDer(octets.content)
    const [version, , print, , time] = parts
    const [algorithm, hash] = print?.parts ?? []
    const moment = momentOf(time)
    const isInfo = isNumber(version, 1) && isAlgorithm(algorithm, OID.sha256, 'either') && hash?.tag === TAG.octets
    return isInfo && moment ? { bytes: octets.content, imprint: hash.content, moment } : null
  } catch (error) {
    if (error instanceof NotDer) return null
    throw error
  }
}

function momentOf(time: Der | undefined): string | null {
  if (time?.tag !== TAG.generalizedTime) return null
  const text = new TextDecoder().decode(time.content)
  const [, year, month, day, hour, minute, second] =
    /^(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)(?:\.\d{1,9})?Z$/.exec(text) ?? []
  return second ? `${year}-${month}-${day}T${hour}:${minute}:${second}Z` : null
}

/** Whether signing-certificate (SHA-1) or its second version (SHA-256 unless said) names the token's certificate first. @source RFC 2634 section 5.4, RFC 5035 */
function namesCertificate({ attributes, certificate }: SignedParts): boolean {
  const [first, second] = [attributes.get(OID.signingCertificate), attributes.get(OID.signingCertificateV2)]
  if (!first && !second) return false
  if (first) {
    const [hash] = first.parts[0]?.parts[0]?.parts ?? []
    if (hash?.tag !== TAG.octets || !isSameBytes(hash.content, sha1(certificate.der))) return false
  }
  if (second) {
    const [one, two] = second.parts[0]?.parts[0]?.parts ?? []
    const [algorithm, hash] = one?.tag === TAG.sequence ? [oidOf(one.parts[0]), two] : [OID.sha256, one]
    const digest = DIGESTS[algorithm]
    if (!digest || hash?.tag !== TAG.octets || !isSameBytes(hash.content, digest.of(certificate.der))) return false
  }
  return true
}
