import { randomBytes, webcrypto } from 'node:crypto'
import * as asn1js from 'asn1js'
import * as pkijs from 'pkijs'

const YEARS = 10
const OID = { commonName: '2.5.4.3', basicConstraints: '2.5.29.19', keyUsage: '2.5.29.15' }
/** digitalSignature and nonRepudiation, the first two bits. */
const MAY_SIGN = new Uint8Array([0b11000000])

/**
 * Make a P-256 key and a certificate for it that names the organisation and is signed by that key itself, valid for ten years from `now`.
 * The key comes as PKCS 8, both in DER.
 */
export async function makeCertificate(
  organisation: string,
  now: Date,
): Promise<{ certificate: Uint8Array; key: Uint8Array }> {
  const pair = await webcrypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, true, ['sign', 'verify'])
  const engine = new pkijs.CryptoEngine({ name: 'node', crypto: webcrypto as Crypto })
  const made = new pkijs.Certificate({ version: 2, serialNumber: new asn1js.Integer({ valueHex: serialNumber() }) })
  for (const name of [made.subject, made.issuer])
    name.typesAndValues.push(nameOf(OID.commonName, `Dossiers of ${organisation}`))
  made.notBefore.value = new Date(Math.floor(now.getTime() / 1000) * 1000)
  made.notAfter.value = new Date(made.notBefore.value)
  made.notAfter.value.setUTCFullYear(made.notAfter.value.getUTCFullYear() + YEARS)
  const usage = new asn1js.BitString({ valueHex: MAY_SIGN.buffer, unusedBits: 6 })
  made.extensions = [
    extension(OID.basicConstraints, new pkijs.BasicConstraints({ cA: false }).toSchema().toBER(false)),
    extension(OID.keyUsage, usage.toBER(false)),
  ]
  await made.subjectPublicKeyInfo.importKey(pair.publicKey as CryptoKey, engine)
  await made.sign(pair.privateKey as CryptoKey, 'SHA-256', engine)
  return {
    certificate: new Uint8Array(made.toSchema(true).toBER(false)),
    key: new Uint8Array(await webcrypto.subtle.exportKey('pkcs8', pair.privateKey)),
  }
}

function nameOf(type: string, text: string): pkijs.AttributeTypeAndValue {
  // a name of a certificate holds 64 characters at most
  const value = new asn1js.Utf8String({ value: [...text].slice(0, 64).join('') })
  return new pkijs.AttributeTypeAndValue({ type, value })
}

function extension(extnID: string, extnValue: ArrayBuffer): pkijs.Extension {
  return new pkijs.Extension({ extnID, critical: true, extnValue })
}

/** Sixteen bytes, positive and without a leading zero byte. */
function serialNumber(): ArrayBuffer {
  const bytes = new Uint8Array(randomBytes(16))
  bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x40
  return bytes.buffer
}
