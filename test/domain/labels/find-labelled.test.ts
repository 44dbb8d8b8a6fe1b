import { describe, expect, it } from 'vitest'
import { StreamId } from '@/lib/domain/facts/fact'
import { findLabelled, type KnownThings } from '@/lib/domain/labels/find-labelled'
import { readLabel } from '@/lib/domain/labels/read-label'

const at = (text: string) => StreamId.parse(text)
const KNOWN: KnownThings = {
  batches: [
    { stream: at('batch:RS-884'), number: 'RS-884', gtin: '09521234000013', useBy: ['2026-11-30'] },
    { stream: at('batch:RS-901'), number: 'RS-901', gtin: '09521234000013', useBy: ['2027-01-31', '2027-03-31'] },
    { stream: at('batch:T-7'), number: 'T-7', gtin: null, useBy: [] },
  ],
  instruments: [{ stream: at('instrument:HD-02'), number: 'HD-02', serial: 'S7741', asset: '952123HD02' }],
  repairs: [{ stream: at('repair:MD-0041'), number: 'MD-0041', label: 'LBL-0041', asset: '952123R41' }],
}
function named(text: string) {
  const read = readLabel(text, 2026)
  if (!read.ok) return read.error
  const { found, doubts } = findLabelled(read.value, KNOWN)
  return [...found.map((one) => `${one.stream} by ${one.by}`), ...doubts.map((one) => `${one.stream}? ${one.what}`)]
}

describe('which one a label names', () => {
  it.each([
    [']d2010952123400001317261130\u001d10RS-884', ['batch:RS-884 by batch number']],
    ['(01)09521234000013(17)261130(10)rs-884', ['batch:RS-884 by batch number']],
    ['(10)T-7(01)09521234000013', ['batch:T-7 by batch number']],
    ['(01)09521234000013(17)270331(10)RS-901', ['batch:RS-901 by batch number']],
    ['(01)09521234000013(17)270330(10)RS-901', ['batch:RS-901 by batch number', 'batch:RS-901? other use-by day']],
    ['(01)09521234000020(10)RS-884', ['batch:RS-884? other article']],
    ['(01)09521234000013', ['batch:RS-884 by article number', 'batch:RS-901 by article number']],
    ['9521234000013', ['batch:RS-884 by article number', 'batch:RS-901 by article number']],
    ['(8004)952123HD02', ['instrument:HD-02 by asset number']],
    ['(8004)952123R41', ['repair:MD-0041 by asset number']],
    ['(8004)LBL-0041', ['repair:MD-0041 by asset number']],
    ['(21)S7741', ['instrument:HD-02 by serial number']],
    ['instrument:HD-02', ['instrument:HD-02 by own label']],
    ['repair:MD-0041', ['repair:MD-0041 by own label']],
    ['batch:RS-884', ['batch:RS-884 by own label']],
    [' lbl-0041 ', ['repair:MD-0041 by number']],
    ['S7741', ['instrument:HD-02 by number']],
    ['RS-884', ['batch:RS-884 by number']],
    ['(10)RS-88', []],
    ['(8004)952123R4', []],
    ['(21)S77', []],
    ['batch:RS-88', []],
    ['nothing of ours', []],
    ['(240)TP-50', []],
  ])('%j', (text, expected) => {
    expect(named(text)).toEqual(expected)
  })

  it.each([
    ['', { code: 'label-empty' }],
    ['  ', { code: 'label-empty' }],
    ['(01)09521234000014', { code: 'label-unreadable', reason: 'check_digit', text: '(01)09521234000014' }],
    ['0109521234000014', { code: 'label-unreadable', reason: 'check_digit', text: '0109521234000014' }],
    ['(17)261301', { code: 'label-unreadable', reason: 'date_month', text: '(17)261301' }],
    [']C199X', { code: 'label-unreadable', reason: 'unknown_ai', text: ']C199X' }],
  ])('%j is refused', (text, expected) => {
    expect(named(text)).toEqual(expected)
  })

  it('a text that only looks like one of our labels is a text', () => {
    expect(readLabel('batch: of Monday', 2026)).toEqual({ ok: true, value: { kind: 'text', text: 'batch: of Monday' } })
    expect(readLabel('9521234000014', 2026)).toMatchObject({ value: { kind: 'text' } })
  })
})
