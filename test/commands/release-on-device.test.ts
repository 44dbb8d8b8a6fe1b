import { v7 } from 'uuid'
import { describe, expect, test } from 'vitest'
import { FactId } from '@/lib/domain/facts/fact'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { recordPoint } from '@/lib/server/commands/record-point'
import { settleConflict } from '@/lib/server/commands/settle-conflict'
import { onDevices } from './on-devices'
import { at } from './site-device'

describe('released on a device without a network', () => {
  const here = onDevices()

  test('a release given without a network is judged as the record stood then, and kept as given', async () => {
    const { world, device } = here
    const seen = (await device.facts()).length
    await device.receive([device.submit(3, seen)])
    const given = await device.release(5, seen + 1)
    await world.store.setNow('2026-05-12T19:00:00+01:00')
    expect(await device.receive([given])).toMatchObject([{ kind: 'received' }])
    expect(ofKind(await device.facts(), 'released')).toMatchObject([{ observedAt: at(5), observedBy: 'QI' }])
    expect((await device.stateNow())?.conflicts).toEqual([])
  })

  test.each(['before', 'after'] as const)(
    'a release that did not know a record, received %s its submission, is kept in question until a person rules',
    async (when) => {
      const { world, device } = here
      const seen = (await device.facts()).length
      const given = await device.release(5, seen + 1)
      const record = FactId.parse(v7())
      const recordElsewhere = async () =>
        recordPoint(await world.of('L1'), {
          stream: device.repair,
          body: { point: '05', attempt: 1, record: { type: 'remark', text: 'the gauge had been dropped' } },
          id: record,
          observedAt: at(4),
          enteredAt: at(4),
          device: { id: 'phone-2', clockOffsetMs: 0 },
        })
      if (when === 'before') await recordElsewhere()
      const submitted = device.submit(3, seen)
      await device.receive([submitted])
      if (when === 'after') await recordElsewhere()
      expect(await device.receive([given])).toMatchObject([{ kind: 'received' }])
      const state = await device.stateNow()
      const conflict = state?.conflicts.find((one) => one.decision === given.id)
      expect(conflict).toMatchObject({ point: '05', resolved: null })
      expect(conflict?.facts).toContain(record)
      expect(conflict?.facts).not.toContain(submitted.id)
      expect(state?.points[0]?.current.releases).toMatchObject([{ state: 'in question' }])
      const rule = async (ruling: string) =>
        settleConflict(await world.of('QJ'), {
          stream: device.repair,
          body: { conflict: conflict?.noted, ruling, reason: 'gauge checked on the block, it holds' },
        })
      expect(await rule('seen')).toMatchObject({
        ok: false,
        error: { code: 'not-decided', why: 'ruling-does-not-fit' },
      })
      expect(await rule('decision stands')).toMatchObject({ ok: true })
      expect(await rule('decision falls')).toMatchObject({
        ok: false,
        error: { code: 'not-decided', why: 'ruled-already' },
      })
      const ruled = await device.stateNow()
      expect(ruled?.points[0]?.current.releases).toMatchObject([{ state: 'valid' }])
      expect(ruled?.conflicts.find((one) => one.decision === given.id)?.resolved).toMatchObject({ observedBy: 'QJ' })
    },
  )

  test('a ruling made on a device without a network arrives once, and is of a conflict of that repair alone', async () => {
    const { world, device } = here
    const seen = (await device.facts()).length
    const given = await device.release(5, seen + 1)
    await device.receive([device.submit(3, seen)])
    const elsewhere = { point: '05', attempt: 1, record: { type: 'remark', text: 'the gauge had been dropped' } }
    await recordPoint(await world.of('L1'), { stream: device.repair, body: elsewhere })
    await device.receive([given])
    const conflict = (await device.stateNow())?.conflicts.find((one) => one.decision === given.id)?.noted
    const rule = (ruling: string, of: unknown = conflict) =>
      device.decide('settle-conflict', 8, { conflict: of, ruling, reason: 'gauge checked on the block, it holds' })
    expect(await device.receive([rule('decision stands', v7())])).toMatchObject([
      { kind: 'refused', refusal: { code: 'not-found' } },
    ])
    const ruled = rule('decision falls')
    const first = await device.receive([ruled])
    expect(first).toMatchObject([{ kind: 'received' }])
    expect(await device.receive([ruled])).toEqual(first)
    const state = await device.stateNow()
    expect(state?.conflicts.map((one) => one.resolved)).toMatchObject([{ id: ruled.id, observedAt: at(8) }])
    expect(state?.points[0]?.current.releases).toMatchObject([{ state: 'withdrawn' }])
  })

  test('nobody releases own work by being without a network, nor a point that lacks its submission', async () => {
    const { device } = here
    const seen = (await device.facts()).length
    const unsubmitted = await device.release(5, seen)
    expect(await device.receive([unsubmitted])).toMatchObject([
      { kind: 'refused', refusal: { code: 'not-decided', why: 'incomplete' } },
    ])
    await device.receive([device.submit(6, seen)])
    const crew = await device.release(7, seen + 1, 'crew')
    expect(await device.receive([crew])).toMatchObject([{ kind: 'refused', refusal: { code: 'not-own-role' } }])
  })
})
