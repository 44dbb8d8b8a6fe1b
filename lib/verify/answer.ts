import type { BreakCode } from './break-texts'

/** Something that does not hold: a code that never changes, where in the file, and one sentence in plain words. */
export type Break = { code: BreakCode; place: string; text: string }

/** What a check made out or could not, in one sentence. */
export type Statement = { code: string; text: string }

/** What the file says of itself; claims, as good as the answer. */
export type About = {
  kind: 'issue' | 'for review' | 'log export'
  organisation: string | null
  isDemo: boolean
  repair: string | null
  revision: number | null
  purpose: string | null
  asOf: string | null
  factCount: number
  photoCount: number
  origin: string
  logSize: number
  shortDigest: string
  vkey: string
  certificate: { sha256: string; subject: string; isSelfSigned: boolean } | null
  stampedAt: string | null
}

/**
 * What a checker says of a file. Whole (`answer`) and whose (`signer`) are apart: an intact file of a signer that the reader does not know proves that nothing
 * changed since it was signed, not who signed.
 */
export type Answer = {
  answer: 'intact' | 'broken' | 'unreadable'
  signer: 'known' | 'not known' | 'other'
  proved: Statement[]
  notProved: Statement[]
  breaks: Break[]
  /** Verdicts recomputed from the readings: how many agree, of how many criteria. */
  verdicts: { agreed: number; total: number }
  about: About | null
  sizeBytes: number
  verifier: string
}

/** Version of this checker. */
export const VERIFIER = 'verify 1'
