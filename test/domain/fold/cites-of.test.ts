import { expect, test } from 'vitest'
import { parseFact } from '@/lib/domain/facts/fact-kinds'
import { citesOf } from '@/lib/domain/fold/cites-of'

const envelope = {
  v: 1,
  id: '01970000-0000-7000-8000-000000000001',
  observedAt: '2026-05-12T11:40:00+01:00',
  observedBy: 'maren',
  enteredAt: '2026-05-12T11:41:00+01:00',
  enteredBy: 'tobias',
  device: { id: 'tablet-1', clockOffsetMs: 0 },
}

function fact(stream: string, kind: string, body: unknown) {
  const parsed = parseFact({ ...envelope, stream, kind, body })
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error))
  return parsed.value
}

test('a record cites its batches, instruments, persons and device, not its own stream', () => {
  const record = {
    type: 'tape-roll',
    rollNo: 1,
    batch: 'batch:WT-2206',
    sealedUntilUse: 'yes',
    soakStart: '2026-05-14T11:32:05+01:00',
    soakSeconds: { kind: 'number', digits: 24, scale: 0, unit: 's', text: '24' },
    water: { kind: 'number', digits: 17, scale: 0, unit: 'degC', text: '17' },
    wrapStart: '2026-05-14T11:32:40+01:00',
    wrapEnd: '2026-05-14T11:35:00+01:00',
    surface: { kind: 'number', digits: 186, scale: 1, unit: 'degC', text: '18.6' },
    wrappedBy: 'dorrit',
    supervisedBy: 'maren',
    tensionKept: 'yes',
    usedUp: 'yes',
    squeezed: 'yes',
    noGap: 'yes',
    instrument: 'instrument:ST-04',
  }
  expect(citesOf(fact('repair:MD-0044', 'recorded', { point: '14', attempt: 1, record }))).toEqual([
    'batch:WT-2206',
    'device:tablet-1',
    'instrument:ST-04',
    'person:dorrit',
    'person:maren',
    'person:tobias',
  ])
})

test('a name that is plain text is no person, and a waiver names one', () => {
  const notified = fact('batch:FP-118', 'owner-notified', {
    cause: envelope.id,
    to: 'Quellmark',
    how: 'letter',
    repair: 'repair:MD-0041',
  })
  expect(citesOf(notified)).toEqual(['device:tablet-1', 'person:maren', 'person:tobias', 'repair:MD-0041'])
  const waived = fact('repair:MD-0042', 'waived', {
    point: '18',
    attempt: 1,
    party: 'client',
    by: 'ludmila',
    writing: 'letter 4',
  })
  expect(citesOf(waived)).toContain('person:ludmila')
})

test('a correction cites what it takes out and what it puts in', () => {
  const corrected = fact('repair:MD-0042', 'corrected', {
    target: envelope.id,
    reason: 'wrong mix tin read',
    changes: [
      { path: ['partA', 0, 'batch'], from: 'batch:RS-884', to: 'batch:RS-901' },
      { path: ['mixedBy'], from: 'dorrit', to: 'pavo' },
    ],
  })
  expect(citesOf(corrected)).toEqual(
    expect.arrayContaining(['batch:RS-884', 'batch:RS-901', 'person:dorrit', 'person:pavo']),
  )
})
