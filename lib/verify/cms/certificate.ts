import { digestOf, hexOf } from '@/lib/evidence/digest'
import { type Der, NotDer, oidOf, readDer, TAG } from './read-der'

/** What a checker takes from a certificate. */
export type Certificate = {
  der: Uint8Array
  sha256: string
  /** Issuer and serial number as their bytes stand in it. */
  issuer: Uint8Array
  serial: Uint8Array
  /** The subject in words, its parts from the most special on. */
  subject: string
  /** Subject and issuer are the same name: nobody else vouches for it. */
  isSelfSigned: boolean
  key: PublicKey | null
}

/** The kinds of key that may sign, with the key as WebCrypto takes it. */
export type PublicKey = { kind: 'rsa' | 'p256' | 'p384'; spki: Uint8Array; bits: number }

const NAMES: Readonly<Record<string, string>> = {
  '2.5.4.3': 'CN',
  '2.5.4.6': 'C',
  '2.5.4.7': 'L',
  '2.5.4.8': 'ST',
  '2.5.4.10': 'O',
  '2.5.4.11': 'OU',
}
const CURVES: Readonly<Record<string, { kind: 'p256' | 'p384'; bits: number }>> = {
  '1.2.840.10045.3.1.7': { kind: 'p256', bits: 256 },
  '1.3.132.0.34': { kind: 'p384', bits: 384 },
}

/** Read a certificate from its DER; null when it is none. @source RFC 5280 section 4.1 */
export function readCertificate(der: Uint8Array): Certificate | null {
  try {
    const value = readDer(der)
    const [tbs, , signature] = value.parts
    if (value.tag !== TAG.sequence || tbs?.tag !== TAG.sequence || signature?.tag !== TAG.bits) return null
    const [version, serial, , issuer, , subject, spki] = tbs.parts
    if (version?.tag !== TAG.context0 || serial?.tag !== TAG.integer || !issuer || !subject || !spki) return null
    return {
      der,
      sha256: hexOf(digestOf(der)),
      issuer: issuer.bytes,
      serial: serial.bytes,
      subject: nameOf(subject),
      isSelfSigned: hexOf(issuer.bytes) === hexOf(subject.bytes),
      key: keyOf(spki),
    }
  } catch (error) {
    if (error instanceof NotDer) return null
    throw error
  }
}

function nameOf(name: Der): string {
  const parts = name.parts.flatMap((set) =>
    set.parts.map(({ parts: [type, value] }) => {
      const text = new TextDecoder().decode(value?.content ?? new Uint8Array())
      return `${NAMES[oidOf(type)] ?? oidOf(type)}=${text.slice(0, 200)}`
    }),
  )
  return parts.reverse().join(', ').slice(0, 600)
}

function keyOf(spki: Der): PublicKey | null {
  const [algorithm, bits] = spki.parts
  const [type, parameter] = algorithm?.parts ?? []
  if (bits?.tag !== TAG.bits || bits.content[0] !== 0) return null
  if (oidOf(type) === '1.2.840.10045.2.1') {
    const curve = CURVES[oidOf(parameter)]
    return curve ? { ...curve, spki: spki.bytes } : null
  }
  if (oidOf(type) !== '1.2.840.113549.1.1.1' || parameter?.tag !== TAG.none) return null
  const [modulus, exponent] = readDer(bits.content.subarray(1)).parts
  if (modulus?.tag !== TAG.integer || exponent?.tag !== TAG.integer || exponent.content.length > 5) return null
  const digits = modulus.content[0] === 0 ? modulus.content.subarray(1) : modulus.content
  return { kind: 'rsa', spki: spki.bytes, bits: digits.length * 8 - Math.clz32(digits[0] ?? 0) + 24 }
}
