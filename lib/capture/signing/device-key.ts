import { base64Of } from '@/lib/evidence/base64'

const ECDSA = { name: 'ECDSA', namedCurve: 'P-256' } as const

/** A signing key that cannot leave this device: its private part is handed to nobody, not even to this page. `publicKey` is the uncompressed point, 65 bytes in base64. */
export type DeviceKey = { privateKey: CryptoKey; publicKey: string }

/** Make a signing key. @throws TypeError on an address that is not secure: the caller says so before */
export async function makeDeviceKey(): Promise<DeviceKey> {
  const { privateKey, publicKey } = await crypto.subtle.generateKey(ECDSA, false, ['sign', 'verify'])
  return { privateKey, publicKey: base64Of(new Uint8Array(await crypto.subtle.exportKey('raw', publicKey))) }
}

/** The key's signature over bytes: r and s, 64 bytes in base64. @source FIPS 186-5, P-256 with SHA-256 */
export async function signBytes(privateKey: CryptoKey, bytes: Uint8Array): Promise<string> {
  const signature = await crypto.subtle.sign({ name: 'ECDSA', hash: 'SHA-256' }, privateKey, bytes as BufferSource)
  return base64Of(new Uint8Array(signature))
}
