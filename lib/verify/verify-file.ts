import { type Answer, VERIFIER } from './answer'
import type { ByteSource, Hasher } from './byte-source'
import type { Found } from './check-options'
import { CheckEnded, Ledger } from './ledger'
import { nobleHasher } from './noble-hasher'
import { latin1 } from './pdf/latin1'
import { HEAD } from './pdf/read-layout'
import { NOTHING_TRUSTED, type Trusted } from './trusted'
import { verifyDossier } from './verify-dossier'
import { verifyExport } from './verify-export'

export type VerifyOptions = {
  trusted?: Trusted
  hasher?: Hasher
  /** End at the first break: the same answer in less time, with one break named. */
  stopAtFirst?: boolean
  onProgress?: (doneBytes: number) => void
}

const EXPORT_HEAD = '{"kind":"underwrap log",'

/**
 * Check a dossier or a log export from its bytes alone: what is proved, what is not, every break with its place, and whose it is by what the reader trusts.
 * @throws NoWebCrypto where signatures cannot be checked; what the source throws when it cannot be read
 * @source lib/evidence/FORMAT.md
 */
export async function verifyFile(source: ByteSource, options: VerifyOptions = {}): Promise<Answer> {
  const { trusted = NOTHING_TRUSTED, hasher = nobleHasher, stopAtFirst = false, onProgress = () => {} } = options
  const ledger = new Ledger(stopAtFirst)
  const found: Found = { about: null, verdicts: { agreed: 0, total: 0 }, signer: 'not known' }
  try {
    const head = latin1(await source.read(0, Math.min(source.sizeBytes, EXPORT_HEAD.length)))
    const how = { trusted, hasher, onProgress }
    if (head.startsWith(HEAD)) await verifyDossier(source, ledger, found, how)
    else if (head.startsWith(EXPORT_HEAD)) await verifyExport(source, ledger, found, how)
    else ledger.unreadable('not-a-record', 'first line')
  } catch (error) {
    if (!(error instanceof CheckEnded)) throw error
    if (!ledger.isUnreadable && !stopAtFirst)
      ledger.leaveOpen('ended', 'What comes after the last break listed could not be checked.')
  }
  const isBroken = ledger.breaks.length > 0
  return {
    answer: ledger.isUnreadable ? 'unreadable' : isBroken ? 'broken' : 'intact',
    // a broken file says nothing of whose it is, but that it is not the one expected
    signer: isBroken && found.signer === 'known' ? 'not known' : found.signer,
    proved: ledger.proved,
    notProved: ledger.notProved,
    breaks: ledger.breaks,
    verdicts: found.verdicts,
    about: found.about,
    sizeBytes: source.sizeBytes,
    verifier: VERIFIER,
  }
}
