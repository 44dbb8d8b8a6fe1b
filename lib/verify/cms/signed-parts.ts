import { type Certificate, readCertificate } from './certificate'
import { type Der, hasParts, isInOrder, oidOf, TAG } from './read-der'

export const OID = {
  data: '1.2.840.113549.1.7.1',
  signedData: '1.2.840.113549.1.7.2',
  contentType: '1.2.840.113549.1.9.3',
  messageDigest: '1.2.840.113549.1.9.4',
  signingCertificate: '1.2.840.113549.1.9.16.2.12',
  signingCertificateV2: '1.2.840.113549.1.9.16.2.47',
  timeStampToken: '1.2.840.113549.1.9.16.2.14',
  timeStampInfo: '1.2.840.113549.1.9.16.1.4',
  sha1: '1.3.14.3.2.26',
  sha256: '2.16.840.1.101.3.4.2.1',
  sha384: '2.16.840.1.101.3.4.2.2',
  sha512: '2.16.840.1.101.3.4.2.3',
  rsa: '1.2.840.113549.1.1.1',
  rsaSha256: '1.2.840.113549.1.1.11',
  ecdsaSha256: '1.2.840.10045.4.3.2',
  ecdsaSha384: '1.2.840.10045.4.3.3',
  ecdsaSha512: '1.2.840.10045.4.3.4',
} as const

/** The parts of a SignedData with one certificate and one signer, as they stand; nothing of them is checked yet. */
export type SignedParts = {
  version: Der
  digestAlgorithm: Der
  content: Der
  certificate: Certificate
  signer: {
    version: Der
    issuer: Der
    serial: Der
    digestAlgorithm: Der
    signatureAlgorithm: Der
    signature: Uint8Array
  }
  /** Signed attributes by type with their one value, and the bytes that the signature is over. */
  attributes: Map<string, Der>
  signedBytes: Uint8Array
  unsigned: Der | null
}

export type PartsFault = 'form' | 'certificates' | 'attributes'

/**
 * Take a SignedData apart: exactly one digest algorithm, one certificate, one signer by issuer and serial number, signed attributes in DER order with one value each, at
 * most unsigned attributes behind the signature, and nothing else. @returns the fault when it is otherwise
 * @source RFC 5652 section 5, lib/evidence/FORMAT.md section 5.5
 */
export function takeApart(value: Der): SignedParts | PartsFault {
  if (!hasParts(value, TAG.sequence, [TAG.oid, TAG.context0]) || oidOf(value.parts[0]) !== OID.signedData) return 'form'
  const [data] = value.parts[1]?.parts ?? []
  if (value.parts[1]?.parts.length !== 1 || data?.tag !== TAG.sequence) return 'form'
  const [version, digests, content, certificates, signers, ...others] = data.parts
  if (others.length > 0 || version?.tag !== TAG.integer || content?.tag !== TAG.sequence) return 'form'
  if (certificates?.tag !== TAG.context0 || certificates.parts.length !== 1) return 'certificates'
  if (!hasParts(digests, TAG.set, [TAG.sequence]) || !hasParts(signers, TAG.set, [TAG.sequence])) return 'form'
  const [digestAlgorithm] = digests.parts
  const [signer] = signers.parts
  const [holder] = certificates.parts
  const certificate = holder && readCertificate(holder.bytes)
  if (!certificate || !digestAlgorithm || !signer) return 'certificates'
  const [signerVersion, named, signerDigest, signed, signatureAlgorithm, signature, unsigned] = signer.parts
  const isSigner =
    signerVersion?.tag === TAG.integer &&
    hasParts(named, TAG.sequence, [TAG.sequence, TAG.integer]) &&
    signerDigest?.tag === TAG.sequence &&
    signed?.tag === TAG.context0 &&
    signatureAlgorithm?.tag === TAG.sequence &&
    signature?.tag === TAG.octets &&
    (unsigned === undefined || unsigned.tag === TAG.context1) &&
    signer.parts.length <= 7
  const [issuer, serial] = named?.parts ?? []
  if (!isSigner || !issuer || !serial) return 'form'
  const attributes = attributesOf(signed)
  if (!attributes) return 'attributes'
  const signedBytes = new Uint8Array(signed.bytes)
  signedBytes[0] = TAG.set
  return {
    version,
    digestAlgorithm,
    content,
    certificate,
    signer: {
      version: signerVersion,
      issuer,
      serial,
      digestAlgorithm: signerDigest,
      signatureAlgorithm,
      signature: signature.content,
    },
    attributes,
    signedBytes,
    unsigned: unsigned ?? null,
  }
}

/** Attributes of one value each by their type; null when one has another form, comes twice, or they are out of order. */
export function attributesOf(set: Der): Map<string, Der> | null {
  const found = new Map<string, Der>()
  for (const attribute of set.parts) {
    const [type, values] = attribute.parts
    const [only] = values?.parts ?? []
    const isOne = hasParts(attribute, TAG.sequence, [TAG.oid, TAG.set]) && values?.parts.length === 1
    if (!isOne || !only || found.has(oidOf(type))) return null
    found.set(oidOf(type), only)
  }
  return isInOrder(set.parts) ? found : null
}

/** Whether a value is an algorithm of this identifier: without a parameter, or with NULL where that is allowed. */
export function isAlgorithm(value: Der | undefined, oid: string, parameter: 'none' | 'null' | 'either'): boolean {
  if (value?.tag !== TAG.sequence || oidOf(value.parts[0]) !== oid || value.parts.length > 2) return false
  const [, second] = value.parts
  return second === undefined ? parameter !== 'null' : parameter !== 'none' && second.tag === TAG.none
}

/** Whether an INTEGER is this small number. */
export function isNumber(value: Der | undefined, number: number): boolean {
  return value?.tag === TAG.integer && value.content.length === 1 && value.content[0] === number
}
