import * as z from 'zod'
import { Reason } from '../records/common'
import { Moment } from '../time'
import { SignatureBase64 } from './device-proof'
import { Sha256 } from './fact'

/** 32 bytes in base64: a hash of the log's tree. */
export const HashBase64 = z.string().regex(/^[A-Za-z0-9+/]{43}=$/, '32 bytes in base64')

/** A log key as text, `<name>+<key id>+<base64>`; whether its parts agree is for lib/evidence to say. */
const VkeyText = z
  .string()
  .max(400)
  .regex(/^[^\s+]+\+[0-9a-f]{8}\+[A-Za-z0-9+/]{44}$/, 'a verifier key')

/** Bodies of the facts of the streams `key:log` and `key:signature`. They say which keys vouch for the record; no fold of a repair reads them. */
export const KEY_BODIES = {
  'log-key-taken': z.lazy(() =>
    z.strictObject({
      vkey: VkeyText,
      replaces: VkeyText.nullable(),
      endorsement: SignatureBase64.nullable(),
      reason: Reason,
    }),
  ),
  'signing-certificate-taken': z.lazy(() =>
    z.strictObject({
      certificateSha256: Sha256,
      subject: z.string().min(1).max(600),
      notBefore: Moment,
      notAfter: Moment,
      madeHere: z.boolean(),
      reason: Reason,
    }),
  ),
} as const
