import { describe, expect, test } from 'vitest'
import { FactId } from '@/lib/domain/facts/fact'
import type { BodyOf } from '@/lib/domain/facts/fact-kinds'
import type { Block } from '@/lib/dossier/blocks'
import { dossierContext } from '@/lib/dossier/dossier-context'
import { drawnSignatures } from '@/lib/dossier/sections/drawn-signatures'
import { signaturesTable } from '@/lib/dossier/sections/sign-tables'
import { fact, HEX, no } from './facts-by-hand'
import { inputByHand } from './input-by-hand'

const proof = {
  key: FactId.parse('0196c8f0-0000-7000-8000-000000000010'),
  gate: 'PIN' as const,
  offline: true,
  signature: `${'A'.repeat(86)}==`,
}
const drawing = {
  v: 1 as const,
  strokes: [
    [
      [20, 120],
      [400, 40],
    ],
    [[420, 60]],
  ] as [number, number][][],
}

const signedBy = (method: BodyOf<'signed'>['method']) => ({
  fact: fact('signed', '05-21 09:00', 'kp', {
    meaning: 'witnessed',
    point: no('16'),
    attempt: 1,
    role: 'client',
    name: 'Ludmila Stannard',
    party: 'client',
    covers: [{ fact: proof.key, sha256: HEX('c') }],
    method,
  }),
  state: 'stands' as const,
  brokenBy: null,
})
const texts = (blocks: readonly Block[]) => JSON.stringify(blocks)

describe('how a signature was made', () => {
  const context = dossierContext(inputByHand(), new Set(), null)

  test('a device’s key is named with its PIN, and that there was no network', () => {
    expect(texts(signaturesTable([signedBy({ kind: 'device', proof })], context))).toContain(
      'key of this device behind a PIN, without a network',
    )
    const online = signaturesTable([signedBy({ kind: 'device', proof: { ...proof, offline: false } })], context)
    expect(texts(online)).not.toContain('without a network')
  })

  test('a signature drawn in person is shown as drawn, or said to be kept no more', () => {
    const signed = signedBy({ kind: 'in person', witness: 'qi' as never, drawing: HEX('d'), proof })
    expect(texts(signaturesTable([signed], context))).toContain(
      'by key of this device behind a PIN, without a network; drawn,',
    )
    const [gone] = drawnSignatures([signed], context)
    expect(gone).toMatchObject({ kind: 'paragraph' })
    expect(texts([gone as Block])).toContain(HEX('d'))
    const kept = dossierContext({ ...inputByHand(), drawings: new Map([[HEX('d'), drawing]]) }, new Set(), null)
    const [shown] = drawnSignatures([signed], kept)
    expect(shown).toMatchObject({
      kind: 'picture',
      picture: { shapes: [{ kind: 'segments' }, { kind: 'polyline' }, { kind: 'circle', x: 420, y: 60 }] },
    })
    expect(drawnSignatures([signedBy({ kind: 'password' })], kept)).toEqual([])
  })
})
