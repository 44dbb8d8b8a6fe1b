import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { checkStore } from '@/lib/server/check/check-store'
import { rebuildTree } from '@/lib/server/log/extend-tree'
import { keyFile } from '@/lib/server/log/key-folder'
import { openLog } from '@/lib/server/log/open-log'
import { remark } from '@/test/store/facts-for-tests'
import { openTestStore, type TestStore } from '@/test/store/test-store'
import { appendTo, fillStore, keepTables, QI } from './filled-store'

describe('check-store', { timeout: 120_000 }, () => {
  let store: TestStore
  let objects: { photo: string; rendition: string; dossier: string }
  const query = (text: string, values: unknown[] = []) => store.db.pool.query(text, values)
  const check = async () => {
    const lines: string[] = []
    const { checkedCount, brokenCount } = await checkStore(store, (line) => lines.push(line))
    const broken = lines.filter((line) => line.startsWith('broken: '))
    expect(broken.length).toBe(brokenCount)
    return { checkedCount, broken, lines }
  }
  /** Change something, look, and put it back. */
  const brokenAfter = async (change: string, restore: string, values: unknown[] = []) => {
    await query(change, values)
    const { broken } = await check()
    await query(restore, values)
    return broken
  }

  beforeAll(async () => {
    store = await openTestStore({ now: '2026-05-20T12:00:00+01:00' })
    objects = await fillStore(store)
    await query('create table kept_facts as select * from facts')
  })
  afterAll(() => store?.remove())
  afterEach(async () => expect((await check()).broken).toEqual([]))

  test('an untouched store is whole, and the check changes nothing of it', async () => {
    const dump = async () =>
      JSON.stringify(
        (
          await Promise.all(
            ['facts', 'tree_nodes', 'checkpoints', 'repairs', 'uses', 'projection_debts', 'fact_cites'].map((table) =>
              query(`select t::text from ${table} t order by 1`),
            ),
          )
        ).map((answer) => answer.rows),
      )
    const before = await dump()
    const { checkedCount, lines } = await check()
    expect(lines).toEqual([])
    expect(checkedCount).toBeGreaterThan(30)
    expect(await dump()).toBe(before)
  })

  test('a fact changed in the database is named, whether its digest was changed with it or not', async () => {
    const text = `replace(convert_from(bytes, 'UTF8'), '640', '641')`
    const restore =
      'update facts f set bytes = k.bytes, sha256 = k.sha256 from kept_facts k where k.tenant = f.tenant and k.leaf = f.leaf'
    const alone = await brokenAfter(
      `update facts set bytes = convert_to(${text}, 'UTF8') where kind = 'recorded'`,
      restore,
    )
    expect(alone).toContainEqual(
      expect.stringMatching(
        /^broken: fact 2 of repair:MD-1 \(tenant-a, leaf 5\): its bytes do not give its digest\. \S/,
      ),
    )
    const both = await brokenAfter(
      `update facts set bytes = convert_to(${text}, 'UTF8'), sha256 = encode(sha256(convert_to(${text}, 'UTF8')), 'hex') where kind = 'recorded'`,
      restore,
    )
    expect(both).toContainEqual(
      expect.stringMatching(
        /^broken: tree of the log of tenant-a, level 0, node 5: it is not what the stored facts give\. \S/,
      ),
    )
    expect(both).toContainEqual(
      expect.stringMatching(/^broken: checkpoint of tenant-a over \d+ facts: the log no longer contains it/),
    )
    expect(both).toContainEqual(
      expect.stringMatching(/^broken: checkpoint in dossier repair:MD-1 revision 0: the log no longer contains it/),
    )
  })

  test('a receipt moved to another day is found by the log', async () => {
    const broken = await brokenAfter(
      `update facts set received_at = '2026-05-13T12:00:00+01:00' where leaf = 4`,
      'update facts f set received_at = k.received_at from kept_facts k where k.leaf = f.leaf and k.tenant = f.tenant',
    )
    expect(broken).toContainEqual(expect.stringContaining('level 0, node 4: it is not what the stored facts give'))
  })

  test('a fact taken out leaves a gap that is named, also when it was the last', async () => {
    const restore =
      'insert into facts select k.* from kept_facts k where not exists (select 1 from facts f where f.tenant = k.tenant and f.leaf = k.leaf)'
    expect(await brokenAfter('delete from facts where leaf = 4', restore)).toEqual(
      expect.arrayContaining([
        expect.stringContaining('log of tenant-a: leaf 4 is missing'),
        expect.stringContaining('it comes after position 0 of its stream'),
      ]),
    )
    const last = await brokenAfter('delete from facts where leaf = (select max(leaf) from facts)', restore)
    expect(last).toContainEqual(
      expect.stringMatching(/log of tenant-a: \d+ facts were received and the last one stored is leaf \d+/),
    )
  })

  test('a photo changed on disk, one missing and a changed dossier are named; a file that no fact cites is noted', async () => {
    const pathOf = (sha256: string) => store.photos.path?.(sha256) ?? ''
    const kept = new Map(
      [objects.photo, objects.rendition, objects.dossier].map((sha256) => [sha256, readFileSync(pathOf(sha256))]),
    )
    const flipped = Buffer.from(kept.get(objects.photo) ?? '')
    flipped[100] = (flipped[100] ?? 0) ^ 1
    writeFileSync(pathOf(objects.photo), flipped)
    rmSync(pathOf(objects.rendition))
    writeFileSync(pathOf(objects.dossier), 'cut')
    await store.photos.add?.(Buffer.from('left over'))
    const { broken, lines } = await check()
    for (const [sha256, bytes] of kept) writeFileSync(pathOf(sha256), bytes)
    expect(broken).toEqual([
      expect.stringMatching(
        `^broken: original photo of fact .* in repair:MD-1, object ${objects.photo}: its bytes were changed\\. \\S`,
      ),
      expect.stringMatching(`^broken: rendition of fact .*, object ${objects.rendition}: it is missing\\. \\S`),
      expect.stringMatching(
        `^broken: dossier repair:MD-1 revision 0, object ${objects.dossier}: its bytes were changed\\. \\S`,
      ),
    ])
    expect(lines).toContainEqual(expect.stringMatching(/^unused: .* no fact cites it/))
  })

  test.each([
    ['repairs', `delete from repairs`, 'projection of repair:MD-1 (tenant-a): its row is missing'],
    [
      'repairs, changed',
      `update repairs set status = 'accepted'`,
      'projection of repair:MD-1 (tenant-a): row or uses are not',
    ],
    ['uses', `delete from uses where no = 0`, 'projection of repair:MD-1 (tenant-a): row or uses are not'],
    ['photos', 'delete from photos', 'projection photos of tenant-a'],
    ['issues', 'update issues set revision = 7', 'projection issues of tenant-a'],
    ['fact_cites', `delete from fact_cites where to_stream = 'batch:FP-1'`, 'projection fact_cites of tenant-a'],
    [
      'fact_cites, added',
      `insert into fact_cites values ('tenant-a', gen_random_uuid(), 'repair:MD-1', 'batch:X-1')`,
      'projection fact_cites of tenant-a: it holds 1 rows',
    ],
  ])(
    'a row of the projection %s that is not what the facts give is named, and what mends it',
    async (_, change, problem) => {
      const putBack = await keepTables(store, ['fact_cites', 'repairs', 'uses', 'photos', 'issues'])
      await query(change)
      const { broken } = await check()
      await putBack()
      expect(broken).toContainEqual(expect.stringContaining(problem))
      expect(broken.every((line) => line.endsWith('Run npm run underwrap -- reproject.'))).toBe(true)
    },
  )

  test('a changed node and a missing node of the tree are named, and a rebuild mends them', async () => {
    await query(`update tree_nodes set hash = '\\x00' where level = 1 and no = 0`)
    await query('delete from tree_nodes where level = 0 and no = 1')
    const { broken } = await check()
    expect(broken.map((line) => line.split('. ')[0])).toEqual(
      expect.arrayContaining([
        'broken: tree of the log of tenant-a, level 1, node 0: it is not what the stored facts give',
        'broken: tree of the log of tenant-a, level 0, node 1: it is missing',
      ]),
    )
    await rebuildTree(store, store.tenant)
  })

  test('a checkpoint with another text, and a secret key that is gone, are named', async () => {
    const [row] = (await query('select note, size from checkpoints order by size limit 1')).rows
    await query('update checkpoints set note = $1 where size = $2', [row.note.replace('— ', '— x'), row.size])
    const { key } = await openLog(store, store.tenant, QI)
    const path = keyFile(store.dataDir, key.vkey)
    const secret = readFileSync(path)
    rmSync(path)
    const { broken } = await check()
    writeFileSync(path, secret, { mode: 0o600 })
    await query('update checkpoints set note = $1 where size = $2', [row.note, row.size])
    expect(broken).toEqual([
      expect.stringMatching(/checkpoint of tenant-a over \d+ facts: its text is not signed by the key of its time/),
      expect.stringMatching(/log key of tenant-a: .* is missing\. .*rotate-log-key/),
    ])
  })

  test('facts received since the last checkpoint and the last fold are no break', () =>
    appendTo(store, [remark('since then')]))
})
