import type { FactId } from '../facts/fact'
import type { FactOf } from '../facts/fact-kinds'
import { instantOf } from '../time'
import type { EffectiveRecord } from './effective-records'
import { ofKind } from './order-facts'
import type { RepairGround } from './repair-ground'
import type { SignatureState } from './repair-state'

/**
 * State of signatures: one stands while every fact that it covers is as signed. A correction of a covered record that the signature does not
 * cover breaks it, and so do a digest that is not the fact's and a device's key that does not speak for the signer.
 */
export function signatureStates(ground: RepairGround, signed: readonly FactOf<'signed'>[]): SignatureState[] {
  const corrections = new Map<FactId, FactId[]>(
    ground.records.map((one) => [one.fact.id, one.corrections.map((fact) => fact.id)]),
  )
  return signed.map((fact) => {
    const covered = new Set(fact.body.covers.map((one) => one.fact))
    const brokenBy =
      fact.body.covers.flatMap((one) => corrections.get(one.fact) ?? []).find((id) => !covered.has(id)) ?? null
    const differs = fact.body.covers.some((one) => {
      const digest = ground.beside.sha256Of?.(one.fact)
      return digest !== undefined && digest !== one.sha256
    })
    const key = keyFault(ground, fact)
    return {
      fact,
      state: brokenBy !== null || differs || key !== null ? 'broken' : 'stands',
      brokenBy: brokenBy ?? key?.by ?? null,
    }
  })
}

/**
 * Why a device's key does not speak for a signature: it is not known on that device, is another person's, or ended before. Whether the key made the proof is for who holds the bytes to see: the
 * server before it keeps the fact, and the checker.
 */
function keyFault(ground: RepairGround, fact: FactOf<'signed'>): { by: FactId | null } | null {
  const { method } = fact.body
  const proof = 'proof' in method ? method.proof : undefined
  if (!proof) return null
  const signer = method.kind === 'in person' ? method.witness : fact.observedBy
  const stream = `device:${fact.device.id}`
  const key = ofKind(ground.facts, 'signing-key-taken').find((one) => one.id === proof.key)
  if (!key || key.stream !== stream || key.observedBy !== signer) return { by: null }
  const ended = ofKind(ground.facts, 'signing-key-ended').find(
    (one) =>
      one.stream === stream && one.body.key === key.id && instantOf(one.observedAt) <= instantOf(fact.observedAt),
  )
  return ended ? { by: ended.id } : null
}

/** Signatures that stand and cover a record with all its corrections. */
export function signaturesOver(record: EffectiveRecord, signatures: readonly SignatureState[]): FactOf<'signed'>[] {
  const needed = [record.fact.id, ...record.corrections.map((one) => one.id)]
  return signatures
    .filter(
      (one) => one.state === 'stands' && needed.every((id) => one.fact.body.covers.some((cover) => cover.fact === id)),
    )
    .map((one) => one.fact)
}
