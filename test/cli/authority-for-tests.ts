import { randomBytes, webcrypto } from 'node:crypto'
import * as asn1js from 'asn1js'
import * as pkijs from 'pkijs'

const OID = { commonName: '2.5.4.3', constraints: '2.5.29.19', usage: '2.5.29.15', names: '2.5.29.17' }
const DNS = 2
const ADDRESS = 7
const DAY_MS = 86_400_000

export type Issued = { cert: string; key: string }
export type Wanted = { dns?: string[]; addresses?: string[]; from?: Date; to?: Date }

/** A certificate authority of our own: its certificate, and server certificates under it, all as PEM. */
export async function makeAuthority(): Promise<{ cert: string; issue(wanted: Wanted): Promise<Issued> }> {
  const engine = new pkijs.CryptoEngine({ name: 'node', crypto: webcrypto as Crypto })
  const own = await keyPair()
  const make = async (
    subject: string,
    isAuthority: boolean,
    publicKey: CryptoKey,
    { dns = [], addresses = [], from, to }: Wanted,
  ) => {
    const made = new pkijs.Certificate({ version: 2, serialNumber: new asn1js.Integer({ valueHex: serial() }) })
    made.subject.typesAndValues.push(nameOf(subject))
    made.issuer.typesAndValues.push(nameOf('Authority of a test'))
    made.notBefore.value = from ?? new Date(Date.now() - DAY_MS)
    made.notAfter.value = to ?? new Date(Date.now() + 300 * DAY_MS)
    const names = new pkijs.GeneralNames({
      names: [
        ...dns.map((value) => new pkijs.GeneralName({ type: DNS, value })),
        ...addresses.map(
          (one) =>
            new pkijs.GeneralName({ type: ADDRESS, value: new asn1js.OctetString({ valueHex: fourBytes(one) }) }),
        ),
      ],
    })
    made.extensions = [
      extension(OID.constraints, new pkijs.BasicConstraints({ cA: isAuthority }).toSchema().toBER(false)),
      extension(
        OID.usage,
        new asn1js.BitString({
          valueHex: new Uint8Array([isAuthority ? 0b100 : 0b10000000]).buffer,
          unusedBits: isAuthority ? 2 : 7,
        }).toBER(false),
      ),
      ...(names.names.length > 0 ? [extension(OID.names, names.toSchema().toBER(false))] : []),
    ]
    await made.subjectPublicKeyInfo.importKey(publicKey, engine)
    await made.sign(own.privateKey, 'SHA-256', engine)
    return pem('CERTIFICATE', made.toSchema(true).toBER(false))
  }
  return {
    cert: await make('Authority of a test', true, own.publicKey, {}),
    async issue(wanted) {
      const pair = await keyPair()
      const key = await webcrypto.subtle.exportKey('pkcs8', pair.privateKey)
      return { cert: await make('server', false, pair.publicKey, wanted), key: pem('PRIVATE KEY', key) }
    },
  }
}

function keyPair(): Promise<CryptoKeyPair> {
  return webcrypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, true, [
    'sign',
    'verify',
  ]) as Promise<CryptoKeyPair>
}

function nameOf(text: string): pkijs.AttributeTypeAndValue {
  return new pkijs.AttributeTypeAndValue({ type: OID.commonName, value: new asn1js.Utf8String({ value: text }) })
}

function extension(extnID: string, extnValue: ArrayBuffer): pkijs.Extension {
  return new pkijs.Extension({ extnID, critical: extnID !== OID.names, extnValue })
}

function fourBytes(address: string): ArrayBuffer {
  return new Uint8Array(address.split('.').map(Number)).buffer
}

function serial(): ArrayBuffer {
  const bytes = new Uint8Array(randomBytes(12))
  bytes[0] = ((bytes[0] ?? 0) & 0x3f) | 0x40
  return bytes.buffer
}

function pem(label: string, der: ArrayBuffer): string {
  const lines =
    Buffer.from(der)
      .toString('base64')
      .match(/.{1,64}/g) ?? []
  return `-----BEGIN ${label}-----\n${lines.join('\n')}\n-----END ${label}-----\n`
}
