import { v7 } from 'uuid'
import { describe, expect, test } from 'vitest'
import type { StreamId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { canonicalBytes } from '@/lib/evidence/canonical-bytes'
import { hexDigestOf } from '@/lib/evidence/digest'
import { endSigningKey } from '@/lib/server/commands/end-signing-key'
import { openDesk } from '@/lib/server/commands/open-desk'
import { takeSigningKey } from '@/lib/server/commands/take-signing-key'
import { onDevices } from './on-devices'
import { at } from './site-device'
import { PASSWORD } from './world'
import { DRAWING } from './world-facts'

describe('signed on a device without a network', () => {
  const here = onDevices()

  test('a key is taken with the password of the person whom it signs for', async () => {
    const { world, device } = here
    const form = (password: string) => ({
      stream: 'device:tab-of-two',
      body: { algorithm: 'ECDSA P-256 SHA-256', publicKey: device.publicKey },
      id: v7(),
      signer: { by: 'password', person: 'L1', password },
    })
    expect(await takeSigningKey(await world.of('QI'), form('guessed'))).toMatchObject({
      ok: false,
      error: { code: 'password-wrong' },
    })
    expect(await takeSigningKey(await world.of('QI'), form(PASSWORD))).toMatchObject({ ok: true })
    const [key] = (await (await openDesk(await world.of('QI'))).factsOf('device:tab-of-two' as StreamId)) ?? []
    expect(key).toMatchObject({ kind: 'signing-key-taken', observedBy: 'L1' })
  })

  test('a signature is kept at the time it was made, with how, once however often it is sent', async () => {
    const { device } = here
    const made = await device.sign(4)
    for (let sends = 0; sends < 2; sends += 1)
      expect(await device.receive([made])).toMatchObject([{ kind: 'received' }])
    expect(ofKind(await device.facts(), 'signed')).toMatchObject([
      {
        observedAt: at(4),
        observedBy: 'QI',
        body: { method: { kind: 'device', proof: { key: device.keyFact, gate: 'PIN', offline: true } } },
      },
    ])
    expect((await device.stateNow())?.points[0]?.current.signatures).toMatchObject([{ state: 'stands' }])
  })

  test('what was changed after signing, or signed with another’s key, is refused', async () => {
    const { device } = here
    const made = await device.sign(4)
    const changed = { ...made, input: { ...made.input, observedAt: at(6), enteredAt: at(6) } }
    expect(await device.receive([changed])).toMatchObject([{ kind: 'refused', refusal: { code: 'key-proof-wrong' } }])
    const other = await device.sign(4, { key: 'L1', meaning: 'performed', role: 'lead' })
    expect(await device.receive([other])).toMatchObject([{ kind: 'refused', refusal: { code: 'key-unknown' } }])
    const unknown = await device.sign(4, { covers: [{ fact: v7(), sha256: '0'.repeat(64) }] })
    expect(await device.receive([unknown])).toMatchObject([{ kind: 'refused', refusal: { code: 'covers-differ' } }])
    expect(ofKind(await device.facts(), 'signed')).toEqual([])
  })

  test('a decision is not dated before what the same device had entered', async () => {
    const { device } = here
    const early = await device.sign(0)
    expect(await device.receive([early])).toMatchObject([
      { kind: 'refused', refusal: { code: 'decision-misdated', notBefore: at(1) } },
    ])
  })

  test('an ended key signs nothing more; what it signed before stands', async () => {
    const { world, device } = here
    await device.receive([await device.sign(4)])
    const end = { stream: device.stream, body: { key: device.keyFact, reason: 'tablet lost in the sump' } }
    expect(await endSigningKey(await world.of('L1'), end)).toMatchObject({ ok: false, error: { code: 'not-allowed' } })
    expect(await endSigningKey(await world.of('QI'), end)).toMatchObject({ ok: true })
    const late = await device.sign(5)
    expect(await device.receive([late])).toMatchObject([{ kind: 'refused', refusal: { code: 'key-ended' } }])
    expect((await device.stateNow())?.points[0]?.current.signatures).toMatchObject([{ state: 'stands' }])
  })

  test('a client without an account signs in person with a drawn signature; the holder’s key witnesses', async () => {
    const { world, device } = here
    const drawing = hexDigestOf(canonicalBytes(DRAWING))
    const signer = { by: 'in person', person: 'KP', name: 'Person KP', drawing } as const
    const made = await device.sign(4, { signer, meaning: 'witnessed', role: 'client' })
    expect(await device.receive([made])).toMatchObject([{ kind: 'refused', refusal: { code: 'invalid' } }])
    const drawn = { ...made, input: { ...made.input, drawing: DRAWING } }
    expect(await device.receive([drawn])).toEqual([expect.objectContaining({ kind: 'received' })])
    expect(ofKind(await device.facts(), 'signed').at(-1)).toMatchObject({
      observedBy: 'KP',
      body: { name: 'Person KP', method: { kind: 'in person', witness: 'QI', drawing, proof: { offline: true } } },
    })
    expect(await world.store.photos.has(drawing)).toBe(true)
  })

  test('what was observed never waits for a refused decision', async () => {
    const { device } = here
    const early = await device.sign(0)
    const answers = await device.receive([early, device.record(7), device.submit(8, 4)])
    expect(answers.map((one) => one.kind)).toEqual(['refused', 'received', 'held'])
  })
})
