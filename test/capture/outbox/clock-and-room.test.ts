import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { measureClock } from '@/lib/capture/outbox/device-clock'
import { judgeRoom, RESERVE_BYTES } from '@/lib/capture/outbox/device-storage'
import { createMemoryOutboxStore } from '@/lib/capture/outbox/memory-outbox-store'
import { Sha256 } from '@/lib/domain/facts/fact'
import { createPieceFolder, PIECES_KEPT_MS } from '@/lib/server/commands/receive-piece-folder'
import { NOW } from '@/test/commands/world'
import { outboxOf, remarkAt } from './outbox-for-tests'

const serverNow = '2026-05-12T09:00:00+01:00'
const atMs = Date.parse(serverNow)
const storageOf = (freeBytes: number | null, isKept = true) => ({
  persist: async () => isKept,
  estimate: async () => (freeBytes === null ? null : { usageBytes: 1000, quotaBytes: 1000 + freeBytes }),
})

describe('the clock of a device', () => {
  test.each([
    ['right, on a slow way', 0, 3000, 0],
    ['7 min fast', 420_000, 200, 420_000],
    ['2 min slow', -120_000, 200, -120_000],
    ['half a second off, which cannot be told', 500, 200, 0],
  ])('%s', (_case, offMs, roundTripMs, expected) => {
    const sentMs = atMs + 500 + offMs - roundTripMs / 2
    expect(measureClock({ sentMs, gotMs: sentMs + roundTripMs, serverNow }, null)).toMatchObject({
      offsetMs: expected,
      isFarOff: Math.abs(expected) > 60_000,
      drift: null,
    })
  })

  test('a clock that was set between two contacts is flagged, and later facts carry the offset', async () => {
    const right = measureClock({ sentMs: atMs + 400, gotMs: atMs + 600, serverNow }, null)
    const moved = measureClock({ sentMs: atMs + 420_400, gotMs: atMs + 420_600, serverNow }, right)
    expect(moved.drift).toEqual({ fromMs: 0, toMs: 420_000 })
    expect(measureClock({ sentMs: atMs + 421_400, gotMs: atMs + 421_600, serverNow }, moved).drift).toBeNull()
    const store = createMemoryOutboxStore()
    await store.keepNote('clock', moved)
    const kept = await outboxOf('T1', { store }).capture(remarkAt('R-1', 'by a fast clock'))
    expect(kept).toMatchObject({
      value: { input: { device: { id: 'phone-1', clockOffsetMs: 420_000 }, observedAt: NOW } },
    })
  })
})

describe('room on a device', () => {
  test.each([
    ['enough', 1_000_000_000, 'enough'],
    ['nearly full', 100_000_000, 'nearly full'],
    ['one byte short of the reserve', RESERVE_BYTES - 1, 'full'],
    ['the reserve to the byte', RESERVE_BYTES, 'nearly full'],
    ['not told', null, 'unknown'],
  ])('%s', async (_case, freeBytes, space) => {
    expect(await judgeRoom(storageOf(freeBytes), 'over a reload')).toMatchObject({ keeping: 'kept', space })
  })

  test('a browser that may clear, and a page that only remembers, are told before capture', async () => {
    expect((await judgeRoom(storageOf(null, false), 'over a reload')).keeping).toBe('may be cleared')
    expect((await judgeRoom(storageOf(null), 'until this page closes')).keeping).toBe('until this page closes')
  })

  test('capture stops before it loses anything, and nothing of it is kept', async () => {
    const outbox = outboxOf('T1', { storage: storageOf(RESERVE_BYTES) })
    expect(await outbox.capture(remarkAt('R-1', 'no room'))).toMatchObject({ error: { code: 'storage-nearly-full' } })
    expect(await outbox.entries()).toEqual([])
  })

  test('a password is never kept on a device', async () => {
    const captured = remarkAt('R-1', 'x', { signer: { by: 'password', person: 'T1', password: 'secret' } })
    await expect(outboxOf('T1').capture(captured)).rejects.toThrow('a password is never kept on a device')
  })

  test('only what is refused is dealt with, and setting aside needs a reason', async () => {
    const outbox = outboxOf('T1')
    const kept = await outbox.capture(remarkAt('R-1', 'waiting'))
    const id = kept.ok ? kept.value.id : ''
    expect(await outbox.setAside(id, 'no longer wanted')).toEqual({ ok: false, error: { code: 'not-refused' } })
    expect(await outbox.setAside(id, ' ')).toEqual({ ok: false, error: { code: 'reason-missing' } })
  })
})

test('pieces that nothing was added to for two weeks are removed', async () => {
  const root = mkdtempSync(join(tmpdir(), 'pieces-'))
  let nowMs = Date.now()
  const folder = createPieceFolder(root, () => nowMs)
  const owner = { tenant: 'a', person: 'T1' }
  const sha256 = Sha256.parse('e'.repeat(64))
  await folder.append(owner, { sha256, offset: 0, sizeBytes: 9 }, new Uint8Array(4))
  nowMs += PIECES_KEPT_MS - 60_000
  await folder.sweep()
  expect((await folder.standingOf(owner, sha256)).offset).toBe(4)
  nowMs += 120_000
  await folder.sweep()
  expect((await folder.standingOf(owner, sha256)).offset).toBe(0)
  rmSync(root, { recursive: true })
})
