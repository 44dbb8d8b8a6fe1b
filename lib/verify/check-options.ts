import type { About, Answer } from './answer'
import type { Hasher } from './byte-source'
import type { Trusted } from './trusted'

/** What a check has found by now; it is the answer even where the check ended early. */
export type Found = { about: About | null; verdicts: Answer['verdicts']; signer: Answer['signer'] }

export type CheckOptions = {
  trusted: Trusted
  hasher: Hasher
  onProgress: (doneBytes: number) => void
}
