import { statSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { followKeys } from '@/lib/evidence/follow-keys'
import { checkpointNow } from '@/lib/server/log/checkpoint-now'
import { loadKeysTaken } from '@/lib/server/log/key-facts'
import { keyFile } from '@/lib/server/log/key-folder'
import { openLog } from '@/lib/server/log/open-log'
import { rotateLogKey } from '@/lib/server/log/rotate-log-key'
import { takeSigningCertificate } from '@/lib/server/log/take-signing-certificate'
import { appendFacts } from '@/lib/server/store/append-facts'
import { makeTenant } from '@/lib/server/store/tenants'
import { remark } from '@/test/store/facts-for-tests'
import { openTestStore, type TestStore } from '@/test/store/test-store'
import { isSigned } from './log-for-tests'

const QI = PersonId.parse('QI')
const _LOG = StreamId.parse('key:log')
const PROJECT = StreamId.parse('project:P-1')

/** What the keys of a tenant's log keep to, whichever server is under it. */
export function describeLogKeys(name: string, serverUrl: () => Promise<string | undefined>): void {
  describe(`log keys on ${name}`, () => {
    let store: TestStore
    const _append = async (count: number, stream: string = PROJECT) => {
      const facts = Array.from({ length: count }, (_, at) => remark(`remark ${at}`, stream))
      const appended = await appendFacts(store, store.tenant, facts, { receivedBy: QI })
      if (!appended.ok) throw new Error(appended.error.code)
    }

    beforeAll(async () => {
      const url = await serverUrl()
      store = await openTestStore(url ? { url } : {})
    })
    afterAll(() => store?.remove())

    test('the secret key lies in the data folder, for its owner alone', async () => {
      const { key } = await openLog(store, store.tenant, QI)
      expect(statSync(join(store.dataDir, 'keys')).mode & 0o777).toBe(0o700)
      expect(statSync(keyFile(store.dataDir, key.vkey)).mode & 0o777).toBe(0o600)
    })

    test('a signing certificate is said once, and again only when it is another', async () => {
      const certificate = {
        certificateSha256: '0'.repeat(64) as never,
        subject: 'CN=Plumbline-and-Thrice Inspection',
        notBefore: '2026-01-01T00:00:00Z',
        notAfter: '2036-01-01T00:00:00Z',
        madeHere: true,
        reason: 'first certificate',
      }
      const take = (digit: string) =>
        takeSigningCertificate(store, store.tenant, QI, {
          ...certificate,
          certificateSha256: digit.repeat(64) as never,
        })
      expect([await take('0'), await take('0'), await take('1'), await take('0')]).toEqual([true, false, true, true])
    })

    test('a new key is endorsed by the former one, signs over its own fact, and the former secret is gone', async () => {
      const before = await checkpointNow(store, store.tenant, QI)
      const former = (await openLog(store, store.tenant, QI)).key.vkey
      const { isEndorsed } = await rotateLogKey(store, store.tenant, QI, 'a laptop was lost')
      const after = await checkpointNow(store, store.tenant, QI)
      expect([isEndorsed, isSigned(after), after.size]).toEqual([true, true, before.size + 1])
      expect(after.vkey).not.toBe(before.vkey)
      const { taken } = await loadKeysTaken(store, store.tenant)
      expect(followKeys(taken, before.vkey)).toMatchObject({ reachesPresent: true, brokenAt: null })
      expect(() => statSync(keyFile(store.dataDir, former))).toThrow()
    })

    test('two first checkpoints at once make one key, and two tenants have two logs', async () => {
      await makeTenant(store, { id: 'tenant-b', slug: 'b', name: 'B', isDemo: true })
      const heads = await Promise.all([1, 2, 3].map(() => checkpointNow(store, 'tenant-b', QI)))
      expect(new Set(heads.map((head) => head.text)).size).toBe(1)
      expect(heads[0]).toMatchObject({ size: 1, origin: expect.stringMatching(/^underwrap-demo\//) })
      await expect(checkpointNow(store, 'nobody', QI)).rejects.toMatchObject({ code: 'tenant-unknown' })
    })

    test('without its secret key the log signs nothing and says what to do; a new key is then not endorsed', async () => {
      const { key } = await openLog(store, 'tenant-b', QI)
      const { rename } = await import('node:fs/promises')
      await rename(keyFile(store.dataDir, key.vkey), join(store.dataDir, 'lost'))
      await expect(checkpointNow(store, 'tenant-b', QI)).rejects.toMatchObject({
        code: 'key-missing',
        message: expect.stringContaining('rotate-log-key'),
      })
      expect((await rotateLogKey(store, 'tenant-b', QI, 'key lost')).isEndorsed).toBe(false)
      const { taken } = await loadKeysTaken(store, 'tenant-b')
      expect(followKeys(taken, key.vkey.text).reachesPresent).toBe(false)
    })
  })
}
