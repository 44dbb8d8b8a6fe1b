import type { FactId } from '../facts/fact'
import type { FactOf } from '../facts/fact-kinds'
import type { EffectiveRecord } from './effective-records'
import type { RepairGround } from './repair-ground'
import type { SignatureState } from './repair-state'

/**
 * State of signatures: one stands while every fact that it covers is as signed. A correction of a covered record that the signature does not
 * cover breaks it, and so does a digest that is not the fact's.
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
    return { fact, state: brokenBy !== null || differs ? 'broken' : 'stands', brokenBy }
  })
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
