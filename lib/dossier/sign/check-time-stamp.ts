import { createHash, verify, X509Certificate } from 'node:crypto'
import * as asn1js from 'asn1js'
import * as pkijs from 'pkijs'
import { derOf, oid, parseDer, partsOf, sequence, setOf, tagged } from './der'

const OID = {
  messageDigest: '1.2.840.113549.1.9.4',
  signingCertificate: '1.2.840.113549.1.9.16.2.12',
  signingCertificateV2: '1.2.840.113549.1.9.16.2.47',
  timeStampInfo: '1.2.840.113549.1.9.16.1.4',
  timeStamping: '1.3.6.1.5.5.7.3.8',
  rsa: '1.2.840.113549.1.1.1',
}
const DIGESTS: Record<string, string> = {
  '1.3.14.3.2.26': 'sha1',
  '2.16.840.1.101.3.4.2.1': 'sha256',
  '2.16.840.1.101.3.4.2.2': 'sha384',
  '2.16.840.1.101.3.4.2.3': 'sha512',
}

/** The time-stamp service failed or answered wrongly: nothing is signed without the stamp that was asked for. */
export class TimeStampRefused extends Error {
  readonly code = 'time-stamp-refused'
  constructor(what: string, options?: ErrorOptions) {
    super(`The time-stamp service gave no usable answer: ${what}. Nothing was signed.`, options)
  }
}

/**
 * Check a time-stamp token: imprint and nonce as asked, one signer whose certificate is in it, is named by the signed attributes and may stamp, message digest and signature.
 * @returns the token in DER with that certificate alone
 * @throws TimeStampRefused naming what is wrong
 */
export function checkTimeStamp(token: asn1js.AsnType, sha256: Uint8Array, nonce: Uint8Array): Uint8Array {
  try {
    return checked(token, sha256, nonce)
  } catch (cause) {
    if (cause instanceof TimeStampRefused) throw cause
    throw new TimeStampRefused('its token cannot be read', { cause })
  }
}

function checked(token: asn1js.AsnType, sha256: Uint8Array, nonce: Uint8Array): Uint8Array {
  const [type, body] = partsOf(token)
  const [wrapped] = partsOf(body)
  if (!type || !wrapped) throw new TimeStampRefused('its token is empty')
  const signed = new pkijs.SignedData({ schema: wrapped })
  const [signer, ...others] = signed.signerInfos
  const content = signed.encapContentInfo.eContent?.getValue()
  if (!signer || others.length > 0 || !content || signed.encapContentInfo.eContentType !== OID.timeStampInfo)
    throw new TimeStampRefused('its token is not one signature over one time stamp')
  checkInfo(new Uint8Array(content), sha256, nonce)
  const certificate = certificateOf(signed, signer)
  checkSignature(signer, certificate, new Uint8Array(content))
  const reduced = derOf(sequence(type, tagged(0, [withOneCertificate(wrapped, parseDer(certificate))])))
  if (!Buffer.from(derOf(parseDer(reduced))).equals(reduced)) throw new TimeStampRefused('its token is not in DER')
  return reduced
}

function checkInfo(content: Uint8Array, sha256: Uint8Array, nonce: Uint8Array): void {
  const info = pkijs.TSTInfo.fromBER(new Uint8Array(content).buffer)
  const imprint = new Uint8Array(info.messageImprint.hashedMessage.getValue())
  if (!Buffer.from(imprint).equals(sha256)) throw new TimeStampRefused('it stamped another digest')
  const given = info.nonce ? new Uint8Array(info.nonce.valueBlock.valueHexView) : new Uint8Array()
  if (!Buffer.from(given).equals(nonce)) throw new TimeStampRefused('its answer is to another question')
}

function certificateOf(signed: pkijs.SignedData, signer: pkijs.SignerInfo): Uint8Array {
  const named = signer.sid
  const found = (signed.certificates ?? []).find(
    (one): one is pkijs.Certificate =>
      one instanceof pkijs.Certificate &&
      named instanceof pkijs.IssuerAndSerialNumber &&
      one.issuer.isEqual(named.issuer) &&
      one.serialNumber.isEqual(named.serialNumber),
  )
  if (!found) throw new TimeStampRefused('its token does not hold the certificate that it names')
  const der = new Uint8Array(found.toSchema().toBER(false))
  if (!(new X509Certificate(der).keyUsage ?? []).includes(OID.timeStamping))
    throw new TimeStampRefused('its certificate is not one for time stamps')
  return der
}

function checkSignature(signer: pkijs.SignerInfo, certificate: Uint8Array, content: Uint8Array): void {
  const attributes = signer.signedAttrs?.attributes ?? []
  const attributeOf = (type: string): asn1js.AsnType | undefined =>
    attributes.find((one) => one.type === type)?.values[0]
  const digest = DIGESTS[signer.digestAlgorithm.algorithmId]
  const stated = attributeOf(OID.messageDigest)
  if (!digest || !(stated instanceof asn1js.OctetString)) throw new TimeStampRefused('its token states no known digest')
  if (!createHash(digest).update(content).digest().equals(Buffer.from(stated.getValue())))
    throw new TimeStampRefused('its token is about other contents')
  const isNamed = [OID.signingCertificate, OID.signingCertificateV2].some((type) => {
    const value = attributeOf(type)
    return value !== undefined && namesCertificate(value, certificate)
  })
  if (!isNamed) throw new TimeStampRefused('its token does not name its certificate')
  const bytes = derOf(setOf(...attributes.map((one) => one.toSchema())))
  if (!verify(digest, bytes, new X509Certificate(certificate).publicKey, Buffer.from(signer.signature.getValue())))
    throw new TimeStampRefused('the signature of its token does not hold')
}

/** Whether the first certificate identifier of a signing-certificate attribute is the certificate's digest (SHA-1 in the first version, else as named, SHA-256 unless said). */
function namesCertificate(value: asn1js.AsnType, certificate: Uint8Array): boolean {
  const [certificates] = partsOf(value)
  const [identifier] = partsOf(certificates)
  const [first, second] = partsOf(identifier)
  const algorithm = first instanceof asn1js.Sequence ? partsOf(first)[0] : null
  const hash = algorithm ? second : first
  if (!(hash instanceof asn1js.OctetString)) return false
  const stated = Buffer.from(hash.getValue())
  const name =
    algorithm instanceof asn1js.ObjectIdentifier
      ? DIGESTS[algorithm.valueBlock.toString()]
      : stated.length === 20
        ? 'sha1'
        : 'sha256'
  return name !== undefined && createHash(name).update(certificate).digest().equals(stated)
}

/** The signed data with this certificate in place of all, lists of revoked ones left out, and its signer in the one form that a checker takes. */
function withOneCertificate(signedData: asn1js.AsnType, certificate: asn1js.AsnType): asn1js.Sequence {
  const parts = partsOf(signedData).filter((one) => one.idBlock.tagClass !== 3)
  const [signer] = partsOf(parts.at(-1))
  if (!signer) throw new TimeStampRefused('its token has no signer')
  return sequence(...parts.slice(0, -1), tagged(0, [certificate]), setOf(signerInOneForm(signer)))
}

/** Algorithms of an RSA signature: the digest stands beside, so these are other spellings of plain RSA. RFC 5754 section 3.2. */
const RSA_SPELLINGS = new Set([OID.rsa, '1.2.840.113549.1.1.11', '1.2.840.113549.1.1.12', '1.2.840.113549.1.1.13'])

/** What the signature does not cover is written in one way only: RSA as rsaEncryption with NULL, and no unsigned attributes. */
function signerInOneForm(signer: asn1js.AsnType): asn1js.Sequence {
  const parts = partsOf(signer).filter((one) => !(one.idBlock.tagClass === 3 && one.idBlock.tagNumber === 1))
  const [algorithm, signature] = parts.slice(-2)
  const [name] = partsOf(algorithm)
  if (!algorithm || !signature || !(name instanceof asn1js.ObjectIdentifier))
    throw new TimeStampRefused('its token has no signer')
  const isRsa = RSA_SPELLINGS.has(name.valueBlock.toString())
  return sequence(...parts.slice(0, -2), isRsa ? sequence(oid(OID.rsa), new asn1js.Null()) : algorithm, signature)
}
