import { createHash, sign } from 'node:crypto'
import * as asn1js from 'asn1js'
import type { SigningIdentity } from './certificate'
import { derOf, inOrder, octets, oid, parseDer, partsOf, sequence, setOf, tagged } from './der'

const OID = {
  data: '1.2.840.113549.1.7.1',
  signedData: '1.2.840.113549.1.7.2',
  contentType: '1.2.840.113549.1.9.3',
  messageDigest: '1.2.840.113549.1.9.4',
  signingCertificateV2: '1.2.840.113549.1.9.16.2.47',
  timeStampToken: '1.2.840.113549.1.9.16.2.14',
  sha256: '2.16.840.1.101.3.4.2.1',
  sha256WithRsa: '1.2.840.113549.1.1.11',
  ecdsaWithSha256: '1.2.840.10045.4.3.2',
}

/** Asks for a time-stamp token (DER) over the SHA-256 of a signature value. */
export type TimeStamper = (sha256OfSignature: Uint8Array) => Promise<Uint8Array>

/**
 * A detached CMS signature over content with this SHA-256, in DER: baseline B-B of PAdES, with a time-stamp token B-T. One certificate, one signer, signed attributes
 * content type, message digest and signing-certificate-v2 (ETSI EN 319 122-1). @throws what the time stamper throws
 */
export async function buildCms(
  contentSha256: Uint8Array,
  { certificate, key }: SigningIdentity,
  stamp: TimeStamper | null,
): Promise<Uint8Array> {
  const attributes = inOrder([
    attribute(OID.contentType, oid(OID.data)),
    attribute(OID.messageDigest, octets(contentSha256)),
    attribute(
      OID.signingCertificateV2,
      sequence(sequence(sequence(octets(createHash('sha256').update(certificate.der).digest())))),
    ),
  ])
  const signature = sign('sha256', derOf(setOf(...attributes)), key)
  const token = stamp && (await stamp(createHash('sha256').update(signature).digest()))
  const signer = sequence(
    new asn1js.Integer({ value: 1 }),
    issuerAndSerial(certificate.der),
    sequence(oid(OID.sha256)),
    tagged(0, attributes),
    key.asymmetricKeyType === 'rsa'
      ? sequence(oid(OID.sha256WithRsa), new asn1js.Null())
      : sequence(oid(OID.ecdsaWithSha256)),
    octets(signature),
    ...(token ? [tagged(1, [attribute(OID.timeStampToken, parseDer(token))])] : []),
  )
  const signedData = sequence(
    new asn1js.Integer({ value: 1 }),
    setOf(sequence(oid(OID.sha256))),
    sequence(oid(OID.data)),
    tagged(0, [parseDer(certificate.der)]),
    setOf(signer),
  )
  return derOf(sequence(oid(OID.signedData), tagged(0, [signedData])))
}

function attribute(type: string, value: asn1js.AsnType): asn1js.Sequence {
  return sequence(oid(type), setOf(value))
}

/** Issuer and serial number as they stand in the certificate. */
function issuerAndSerial(der: Uint8Array): asn1js.Sequence {
  const [tbs] = partsOf(parseDer(der))
  const [, serial, , issuer] = partsOf(tbs)
  if (!serial || !issuer) throw new RangeError('Expected a certificate of version 3')
  return sequence(issuer, serial)
}
