import { expect, test } from 'vitest'
import { foldBatch } from '@/lib/domain/fold/fold-batch'
import { foldInstrument } from '@/lib/domain/fold/fold-instrument'
import { at, factMaker, stream } from './fact-maker'

test('a batch keeps every time in quarantine; a recall within one adds none', () => {
  const { facts, make } = factMaker()
  const of = 'batch:RS-884'
  make(of, 'batch-received', '04-28 10:30', {
    number: 'RS-884',
    role: 'resin',
    product: 'resin',
    expiresOn: '2026-11-30',
    quantity: null,
  })
  const first = make(of, 'batch-quarantined', '05-02 09:00', { reason: 'seal broken' })
  make(of, 'batch-recalled', '05-02 12:00', { reason: 'viscosity', by: 'maker' })
  make(of, 'quarantine-lifted', '05-03 09:00', { reason: 'maker cleared it', second: 'ravi' })
  make(of, 'quarantine-lifted', '05-03 10:00', { reason: 'said twice', second: 'ravi' })
  const second = make(of, 'batch-quarantined', '05-04 09:00', { reason: 'too warm' })
  const times = [
    { from: at('05-02 09:00'), to: at('05-03 09:00'), fact: first.id, reason: 'seal broken' },
    { from: at('05-04 09:00'), to: null, fact: second.id, reason: 'too warm' },
  ]
  expect(foldBatch(facts, stream(of), at('05-10 09:00'))).toMatchObject({ isQuarantined: true, quarantines: times })
  expect(foldBatch(facts, stream(of), at('05-03 12:00'))).toMatchObject({
    isQuarantined: false,
    quarantines: times.slice(0, 1),
  })
})

test('an instrument that was never put aside has no time in quarantine', () => {
  const { facts, make } = factMaker()
  const of = 'instrument:HD-03'
  make(of, 'instrument-registered', '04-01 09:00', { number: 'HD-03', kind: 'durometer', measures: ['ShoreD'] })
  expect(foldInstrument(facts, stream(of), at('05-01 09:00'))).toMatchObject({ isQuarantined: false, quarantines: [] })
  const put = make(of, 'instrument-quarantined', '05-02 09:00', { reason: 'dropped' })
  expect(foldInstrument(facts, stream(of), at('05-03 09:00'))?.quarantines).toEqual([
    { from: at('05-02 09:00'), to: null, fact: put.id, reason: 'dropped' },
  ])
})
