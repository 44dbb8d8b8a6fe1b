import type { StreamId } from '@/lib/domain/facts/fact'
import type { FoldBeside } from '@/lib/domain/fold/repair-ground'
import type { DossierSigner } from './sign/dossier-signer'

/** A checkpoint of the holder's log: the signed note and what it says. The root is base64, the vkey the key that signed it. */
export type SealCheckpoint = { origin: string; size: number; root: string; text: string; vkey: string }

/** One fact as the log has it, with the proof of its inclusion in the checkpoint's tree (hashes in base64, from the leaf upwards). */
export type SealedFact = { index: number; leafBytes: Uint8Array; factBytes: Uint8Array; proof: readonly string[] }

/** An issue before this one; `size`, `root` and `consistency` are null when it was issued before the log. */
export type EarlierIssue = {
  revision: number
  sha256: string
  size: number | null
  root: string | null
  consistency: readonly string[] | null
}

/** What lets a stranger check a dossier: the facts as bytes, the log's commitment to them, and the signature. */
export type DossierSeal = {
  tenant: string
  checkpoint: SealCheckpoint
  /** Every fact of every stream named, in order of index. */
  facts: readonly SealedFact[]
  streams: readonly { stream: StreamId; length: number }[]
  likeness: NonNullable<FoldBeside['likeness']>
  earlier: readonly EarlierIssue[]
  signer: DossierSigner
  /** Where a holder of the file can have it checked; printed and drawn as a QR code. */
  checkAddress: string
}
