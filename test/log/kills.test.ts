import { expect, test } from 'vitest'
import { killWriters } from '@/test/long/kills'
import { runsAsked } from '@/test/runs'
import { openTestStore } from '@/test/store/test-store'
import { fillStore } from './filled-store'

const rounds = runsAsked(3)

test('a writer killed at random moments, and the server with it, loses no acknowledged fact, tears neither log nor issue', {
  timeout: 60_000 + rounds * 120_000,
}, async () => {
  const store = await openTestStore({ now: '2026-05-20T12:00:00+01:00' })
  try {
    await fillStore(store)
    await store.close()
    const { faults, told, killedServers } = await killWriters(store.dataDir, rounds)
    expect(faults).toEqual([])
    expect(killedServers).toBe(Math.floor(rounds / 3))
    expect(told.facts.length).toBeGreaterThan(rounds)
    expect(told.heads.length).toBeGreaterThan(0)
    expect(told.issues.length).toBeGreaterThan(0)
    console.log(
      `${rounds} kills, ${killedServers} with the server: ${told.facts.length} facts, ${told.heads.length} heads and ${told.issues.length} issues acknowledged, all kept`,
    )
  } finally {
    await store.remove()
  }
})
