import { isSameBytes } from '@/lib/calc/merkle-tree'
import { parseBase64 } from '@/lib/evidence/base64'
import { type Checkpoint, type SignedCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { followKeys } from '@/lib/evidence/follow-keys'
import { parseVkey } from '@/lib/evidence/vkey'
import type { Answer } from './answer'
import type { Ledger } from './ledger'
import type { KeysTaken } from './record/check-keys'
import type { Trusted } from './trusted'

/** What a file says of its signer. `rootAt` gives the root that its log had at an earlier size, where the file shows it. */
export type Signer = {
  keys: KeysTaken
  checkpoint: Checkpoint
  /** SHA-256 of the certificate that signed, or that the log last named. */
  certificateSha256: string | null
  rootAt(size: number): Uint8Array | null
}

/**
 * Whose the file is, by what the reader trusts: a log key that leads to the file's by endorsements, the signer's certificate, an earlier checkpoint by a key that leads to the
 * file's. All that is given must lead there. Breaks: `key-other`, `certificate-other`, `checkpoint-other`, `checkpoint-contradicts`.
 * @source lib/evidence/FORMAT.md section 7
 */
export function judgeWhose(trusted: Trusted, signer: Signer, ledger: Ledger): Answer['signer'] {
  const { vkey, certificates, checkpoint } = trusted
  if (!vkey && certificates.length === 0 && !checkpoint) return 'not known'
  let isOther = false
  const other = (code: Parameters<Ledger['broken']>[0], place: string): void => {
    isOther = true
    ledger.broken(code, place)
  }
  if (vkey && !followKeys(signer.keys.log, vkey.text).reachesPresent) other('key-other', vkey.text)
  for (const one of certificates)
    if (one !== signer.certificateSha256)
      other('certificate-other', `certificate with SHA-256 ${signer.certificateSha256 ?? 'none'}`)
  if (checkpoint) {
    const fault = faultOf(checkpoint, signer, ledger)
    if (fault) other(fault, `checkpoint of size ${checkpoint.size}`)
  }
  return isOther ? 'other' : 'known'
}

function faultOf(
  given: SignedCheckpoint,
  { keys, checkpoint, rootAt }: Signer,
  ledger: Ledger,
): 'checkpoint-other' | 'checkpoint-contradicts' | null {
  if (given.origin !== checkpoint.origin) return 'checkpoint-other'
  const isLed = keys.log.some(({ vkey: text }) => {
    const vkey = parseVkey(text)
    return vkey.ok && verifyCheckpoint(given, vkey.value) && followKeys(keys.log, text).reachesPresent
  })
  if (!isLed) return 'checkpoint-other'
  const root = given.size === checkpoint.size ? checkpoint.root : rootAt(given.size)
  if (root) return isSameBytes(root, given.root) ? null : 'checkpoint-contradicts'
  ledger.leaveOpen(
    'checkpoint-consistency',
    given.size > checkpoint.size
      ? 'Your checkpoint is later than this file: the file cannot show what came after it.'
      : 'The file holds no proof from your checkpoint’s size to its own: ask the holder for one, or for the log.',
  )
  return null
}

/** Roots at earlier sizes that a dossier's list of earlier issues shows. */
export function rootsOfEarlier(
  earlier: readonly { size: number | null; root: string | null }[],
): (size: number) => Uint8Array | null {
  return (size) => {
    const root = earlier.find((one) => one.size === size)?.root
    return root ? parseBase64(root) : null
  }
}
