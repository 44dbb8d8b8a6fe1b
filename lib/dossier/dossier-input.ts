import type { FactId, Receipt, Sha256 } from '@/lib/domain/facts/fact'
import type { Fact } from '@/lib/domain/facts/fact-kinds'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import type { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import type { DossierSeal } from './dossier-seal'

/** Under which name the dossier goes out: a numbered, frozen issue with its purpose and what changed, or a copy for review that issues nothing. */
export type DossierHead =
  | { kind: 'issue'; revision: number; purpose: string; changes: readonly string[] }
  | { kind: 'for review' }

/** Everything a dossier is made from. The same input gives the same bytes. */
export type DossierInput = {
  /** The repair folded at its `asOf`. */
  state: RepairState
  /** Every fact the fold read, with receipts and digests by fact id. */
  facts: readonly Fact[]
  receipts: ReadonlyMap<FactId, Receipt>
  sha256Of: ReadonlyMap<FactId, Sha256>
  /** Signatures drawn in person, by digest, as far as they are kept. */
  drawings?: ReadonlyMap<Sha256, DrawnSignature>
  head: DossierHead
  /** The holder of the record. */
  organisation: string
  /** A demonstration store: marked on the cover and on every sheet. */
  isDemo: boolean
  /** What proves it to a stranger. Without it a file is plain sheets: for measuring and proofs of layout, never sent out. */
  seal?: DossierSeal
}

/** Version of contents and layout. */
export const TEMPLATE = 'dossier 2'

/** Version of the checker that was current with this template. */
export const VERIFIER = 'verify 1'
