import { Writable } from 'node:stream'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { growTree } from '@/lib/evidence/growing-tree'
import { hashOfLeaf, parseLeaf } from '@/lib/evidence/leaf'
import { isConsistent, isIncluded, parseProof } from '@/lib/evidence/verify-proof'
import { checkpointNow, type TakenCheckpoint } from '@/lib/server/log/checkpoint-now'
import { exportLog } from '@/lib/server/log/export-log'
import { rebuildTree } from '@/lib/server/log/extend-tree'
import { loadKeysTaken } from '@/lib/server/log/key-facts'
import { loadEvidence } from '@/lib/server/log/load-evidence'
import { consistencyProof, inclusionProofs } from '@/lib/server/log/proofs'
import { appendFacts } from '@/lib/server/store/append-facts'
import { remark } from '@/test/store/facts-for-tests'
import { openTestStore, type TestStore } from '@/test/store/test-store'
import { isSigned, partsOf } from './log-for-tests'

const QI = PersonId.parse('QI')
const LOG = StreamId.parse('key:log')
const PROJECT = StreamId.parse('project:P-1')

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
          const claim = { fromSize: from.size, size: to.size, fromRoot: partsOf(from).root, root: partsOf(to).root }
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
        const claim = { fromSize: from.size, fromRoot: partsOf(from).root, size: last.size, root: partsOf(last).root }
        expect(proof && isConsistent({ ...claim, proof })).toBe(true)
      }
    })

    test('the export holds every leaf and fact in order, and its checkpoint is over exactly these', async () => {
      const lines = await linesOf(store)
      const [first, last] = [JSON.parse(lines[0] ?? ''), partsOf({ text: JSON.parse(lines.at(-1) ?? '') })]
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
  })
}
