import * as z from 'zod'
import { Text } from '../records/common'
import { FactId, PersonId, Sha256 } from './fact'

/** 64 bytes in base64: an ECDSA signature over P-256 as r and s, or an Ed25519 signature. */
export const SignatureBase64 = z.string().regex(/^[A-Za-z0-9+/]{86}==$/, '64 bytes in base64')

/** An uncompressed point of P-256 in base64: 65 bytes, the first 04. */
export const PublicKeyBase64 = z.string().regex(/^B[A-Za-z0-9+/]{86}=$/, '65 bytes in base64')

/**
 * What a device's key says to a signature: the fact that registered the key, what stood before its use, whether there was a network, and the key's signature over the statement
 * (lib/evidence/device-statement.ts). The key cannot leave its device; the PIN merely gates it and proves nothing to others.
 */
export const DeviceProof = z.lazy(() =>
  z.strictObject({
    key: FactId,
    gate: z.literal('PIN'),
    offline: z.boolean(),
    signature: SignatureBase64,
  }),
)
export type DeviceProof = z.infer<typeof DeviceProof>

/** How the signer of a signature was known. A client without an account signs in person, and the tablet's holder witnesses it: with his password, or with `proof` by his device's key. */
export const SignatureMethod = z.lazy(() =>
  z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('password') }),
    z.strictObject({ kind: z.literal('device'), proof: DeviceProof }),
    z.strictObject({
      kind: z.literal('in person'),
      witness: PersonId,
      /** SHA-256 of the drawn signature's bytes (lib/domain/signing/drawn-signature.ts), kept beside the facts. */
      drawing: Sha256.optional(),
      proof: DeviceProof.optional(),
    }),
    z.strictObject({ kind: z.literal('in writing'), reference: Text }),
  ]),
)
