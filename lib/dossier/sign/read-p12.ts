import { createPrivateKey, createPublicKey, type KeyObject, webcrypto } from 'node:crypto'
import * as pkijs from 'pkijs'
import { CertificateUnusable, type SigningIdentity, signingIdentity } from './certificate'

const CERTIFICATE_BAG = '1.2.840.113549.1.12.10.1.3'

/**
 * The certificate and key of a PKCS 12 file whose parts are encrypted with AES; the certificate is the one that belongs to the key.
 * @throws CertificateUnusable when the file is none, the password is wrong, the encryption is an old one, or key and certificate cannot sign
 */
export async function readP12(bytes: Uint8Array, password: string, now: Date): Promise<SigningIdentity> {
  const bags = await openedBags(bytes, password)
  const key = bags.map((bag) => keyOf(bag, password)).find((one) => one !== null)
  if (!key) throw new CertificateUnusable('The PKCS 12 file holds no private key.')
  const publicKey = createPublicKey(key).export({ format: 'der', type: 'spki' })
  const own = bags
    .filter((bag) => bag.bagId === CERTIFICATE_BAG)
    .map((bag) => (bag.bagValue instanceof pkijs.CertBag ? bag.bagValue.parsedValue : null))
    .find(
      (one): one is pkijs.Certificate =>
        one instanceof pkijs.Certificate &&
        publicKey.equals(Buffer.from(one.subjectPublicKeyInfo.toSchema().toBER(false))),
    )
  if (!own) throw new CertificateUnusable('The PKCS 12 file holds no certificate of its key.')
  return signingIdentity(new Uint8Array(own.toSchema().toBER(false)), key, false, now)
}

async function openedBags(bytes: Uint8Array, password: string): Promise<pkijs.SafeBag[]> {
  const engine = new pkijs.CryptoEngine({ name: 'node', crypto: webcrypto as Crypto })
  const secret = new Uint8Array(new TextEncoder().encode(password)).buffer
  try {
    const file = pkijs.PFX.fromBER(new Uint8Array(bytes).buffer)
    await file.parseInternalValues({ password: secret, checkIntegrity: true }, engine)
    const safe = file.parsedValue?.authenticatedSafe
    if (!safe) throw new Error('no contents')
    await safe.parseInternalValues({ safeContents: safe.safeContents.map(() => ({ password: secret })) }, engine)
    const contents: { value: pkijs.SafeContents }[] = safe.parsedValue.safeContents
    return contents.flatMap((one) => one.value.safeBags)
  } catch (cause) {
    throw notOpened(cause)
  }
}

function keyOf({ bagValue }: pkijs.SafeBag, password: string): KeyObject | null {
  const isEncrypted = bagValue instanceof pkijs.PKCS8ShroudedKeyBag
  if (!isEncrypted && !(bagValue instanceof pkijs.PrivateKeyInfo)) return null
  const key = Buffer.from(bagValue.toSchema().toBER(false))
  try {
    return createPrivateKey({ key, format: 'der', type: 'pkcs8', ...(isEncrypted ? { passphrase: password } : {}) })
  } catch (cause) {
    throw notOpened(cause)
  }
}

function notOpened(cause: unknown): CertificateUnusable {
  return new CertificateUnusable(
    'The PKCS 12 file does not open: it is none, the password is wrong, or it is encrypted in an old way (export it again with AES-256).',
    { cause },
  )
}
