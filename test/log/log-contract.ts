import { statSync } from 'node:fs'
import { join } from 'node:path'
import { Writable } from 'node:stream'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { parseCheckpoint, verifyCheckpoint } from '@/lib/evidence/checkpoint'
import { followKeys } from '@/lib/evidence/follow-keys'
import { growTree } from '@/lib/evidence/growing-tree'
import { hashOfLeaf, parseLeaf } from '@/lib/evidence/leaf'
import { isConsistent, isIncluded, parseProof } from '@/lib/evidence/verify-proof'
import { parseVkey } from '@/lib/evidence/vkey'
import { checkpointNow, type TakenCheckpoint } from '@/lib/server/log/checkpoint-now'
import { exportLog } from '@/lib/server/log/export-log'
import { rebuildTree } from '@/lib/server/log/extend-tree'
import { loadKeysTaken } from '@/lib/server/log/key-facts'
import { keyFile } from '@/lib/server/log/key-folder'
import { loadEvidence } from '@/lib/server/log/load-evidence'
import { openLog } from '@/lib/server/log/open-log'
import { consistencyProof, inclusionProofs } from '@/lib/server/log/proofs'
import { rotateLogKey } from '@/lib/server/log/rotate-log-key'
import { takeSigningCertificate } from '@/lib/server/log/take-signing-certificate'
import { appendFacts } from '@/lib/server/store/append-facts'
import { makeTenant } from '@/lib/server/store/tenants'
import { remark } from '@/test/store/facts-for-tests'
import { openTestStore, type TestStore } from '@/test/store/test-store'

const QI = PersonId.parse('QI')
const LOG = StreamId.parse('key:log')
const PROJECT = StreamId.parse('project:P-1')

function parsed(checkpoint: Pick<TakenCheckpoint, 'text'>) {
  const note = parseCheckpoint(checkpoint.text)
  if (!note.ok) throw new Error(note.error.at)
  return note.value
}

function isSigned(checkpoint: TakenCheckpoint): boolean {
  const vkey = parseVkey(checkpoint.vkey)
  return vkey.ok && verifyCheckpoint(parsed(checkpoint), vkey.value)
}

async function linesOf(store: TestStore): Promise<string[]> {
  const pieces: Buffer[] = []
  await exportLog(
    store,
    store.tenant,
    new Writable({
      write(chunk, _, next) {
        pieces.push(Buffer.from(chunk))
        next()
      },
    }),
  )
  const text = Buffer.concat(pieces).toString()
  expect(text.endsWith('\n')).toBe(true)
  return text.slice(0, -1).split('\n')
}

/** What the log of a tenant keeps to, whichever server is under it. */
export function describeLog(name: string, serverUrl: () => Promise<string | undefined>): void {
  describe(`log on ${name}`, () => {
    let store: TestStore
    const append = async (count: number, stream: string = PROJECT) => {
      const facts = Array.from({ length: count }, (_, at) => remark(`remark ${at}`, stream))
      const appended = await appendFacts(store, store.tenant, facts, { receivedBy: QI })
      if (!appended.ok) throw new Error(appended.error.code)
    }

    beforeAll(async () => {
      const url = await serverUrl()
      store = await openTestStore(url ? { url } : {})
    })
    afterAll(() => store?.remove())

    test('facts received before the log has a key are its first leaves, and the key is a fact behind them', async () => {
      await append(5)
      const first = await checkpointNow(store, store.tenant, QI)
      expect(first.size).toBe(6)
      expect(first.origin).toMatch(/^underwrap\/[0-9a-f]{16}\/tenant-a$/)
      expect(isSigned(first)).toBe(true)
      const { taken } = await loadKeysTaken(store, store.tenant)
      expect(taken).toEqual([{ vkey: first.vkey, replaces: null, endorsement: null, reason: 'first key of this log' }])
    })

    test('the secret key lies in the data folder, for its owner alone', async () => {
      const { key } = await openLog(store, store.tenant, QI)
      expect(statSync(join(store.dataDir, 'keys')).mode & 0o777).toBe(0o700)
      expect(statSync(keyFile(store.dataDir, key.vkey)).mode & 0o777).toBe(0o600)
    })

    test('a checkpoint asked for twice over the same facts is the same text', async () => {
      expect(await checkpointNow(store, store.tenant, QI)).toEqual(await checkpointNow(store, store.tenant, QI))
    })

    test('every fact of a stream is included, at every size since it came', async () => {
      await append(30)
      const { size, root } = await checkpointNow(store, store.tenant, QI)
      const evidence = await loadEvidence(store, store.tenant, [PROJECT, LOG], size)
      expect(evidence.map((one) => one.leaf)).toEqual(Array.from({ length: size }, (_, at) => at))
      const proofs = await inclusionProofs(store, store.tenant, evidence.map((one) => one.leaf).reverse(), size)
      for (const [at, { index, proof }] of proofs.reverse().entries()) {
        const one = evidence[at]
        const hashes = parseProof(proof)
        if (!one || !hashes) throw new Error('a proof for each fact')
        const claim = {
          index,
          size,
          leafHash: hashOfLeaf(one.leafBytes),
          proof: hashes,
          root: Buffer.from(root, 'base64'),
        }
        expect(isIncluded(claim)).toBe(true)
        expect(isIncluded({ ...claim, leafHash: hashOfLeaf(one.factBytes) })).toBe(false)
        const leaf = parseLeaf(one.leafBytes)
        expect(leaf.ok && leaf.value).toMatchObject({ tenant: 'tenant-a', receivedBy: 'QI' })
      }
    })

    test('the tree read back from the database is the one over the leaves, after growth in pieces and after a rebuild', async () => {
      const { size, root } = await checkpointNow(store, store.tenant, QI)
      const tree = growTree()
      for (const one of await loadEvidence(store, store.tenant, [PROJECT, LOG], size))
        tree.add(hashOfLeaf(one.leafBytes))
      expect(Buffer.from(tree.root()).toString('base64')).toBe(root)
      expect(await rebuildTree(store, store.tenant)).toBe(size)
      expect((await checkpointNow(store, store.tenant, QI)).root).toBe(root)
    })

    test('each later head contains each earlier one', async () => {
      const heads: TakenCheckpoint[] = []
      for (const count of [1, 2, 5, 3]) {
        heads.push(await checkpointNow(store, store.tenant, QI))
        await append(count)
      }
      for (const [at, from] of heads.entries())
        for (const to of heads.slice(at)) {
          const proof = parseProof(await consistencyProof(store, store.tenant, from.size, to.size))
          const claim = { fromSize: from.size, size: to.size, fromRoot: parsed(from).root, root: parsed(to).root }
          expect(proof && isConsistent({ ...claim, proof })).toBe(true)
        }
      await expect(consistencyProof(store, store.tenant, 0, 3)).rejects.toThrow(RangeError)
      await expect(consistencyProof(store, store.tenant, 4, 3)).rejects.toThrow(RangeError)
      await expect(inclusionProofs(store, store.tenant, [7], 7)).rejects.toThrow(RangeError)
      await expect(inclusionProofs(store, store.tenant, [7], 9999)).rejects.toMatchObject({ code: 'facts-missing' })
    })

    test('appends and checkpoints at once give one line of heads', async () => {
      const [heads] = await Promise.all([
        Promise.all(Array.from({ length: 8 }, () => checkpointNow(store, store.tenant, QI))),
        ...Array.from({ length: 8 }, (_, at) => append(5, `project:P-${at + 2}`)),
      ])
      const last = await checkpointNow(store, store.tenant, QI)
      for (const from of heads) {
        const proof = parseProof(await consistencyProof(store, store.tenant, from.size, last.size))
        const claim = { fromSize: from.size, fromRoot: parsed(from).root, size: last.size, root: parsed(last).root }
        expect(proof && isConsistent({ ...claim, proof })).toBe(true)
      }
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

    test('the export holds every leaf and fact in order, and its checkpoint is over exactly these', async () => {
      const lines = await linesOf(store)
      const [first, last] = [JSON.parse(lines[0] ?? ''), parsed({ text: JSON.parse(lines.at(-1) ?? '') })]
      expect(first).toEqual({ kind: 'underwrap log', origin: last.origin, size: last.size, tenant: 'tenant-a', v: 1 })
      expect(lines.length).toBe(2 + 2 * last.size)
      const tree = growTree()
      for (let at = 1; at < lines.length - 1; at += 2) tree.add(hashOfLeaf(Buffer.from(lines[at] ?? '')))
      expect(Buffer.from(tree.root()).equals(Buffer.from(last.root))).toBe(true)
    })

    test('a log that no longer contains a signed head signs nothing more', async () => {
      const { size } = await checkpointNow(store, store.tenant, QI)
      await store.db.pool.query(`update facts set received_by = 'SOMEBODY' where tenant = $1 and leaf = 3`, [
        store.tenant,
      ])
      expect((await checkpointNow(store, store.tenant, QI)).size).toBe(size)
      await rebuildTree(store, store.tenant)
      await append(1)
      await expect(checkpointNow(store, store.tenant, QI)).rejects.toMatchObject({ code: 'forked' })
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
