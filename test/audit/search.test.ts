import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { hexDigestOf } from '@/lib/evidence/digest'
import { growTree } from '@/lib/evidence/growing-tree'
import { hashOfLeaf, parseLeaf } from '@/lib/evidence/leaf'
import { type Actor, actorOf } from '@/lib/server/auth/actor'
import { exportLog } from '@/lib/server/commands/export-log'
import { exportTrailSearch } from '@/lib/server/commands/export-trail-search'
import { openDesk } from '@/lib/server/commands/open-desk'
import { openTrailFact } from '@/lib/server/commands/open-trail-fact'
import { loadAuditFact } from '@/lib/server/views/audit-fact-view'
import { LINES_A_PAGE, loadAuditSearch, type SearchParams } from '@/lib/server/views/audit-search-view'
import { sourceOfBytes } from '@/lib/verify/byte-source'
import { verifyFile } from '@/lib/verify/verify-file'
import { KNOWN_FACT_ID } from '@/test/auth/prepared-names'
import { openPreparedWorld, type Prepared } from '@/test/auth/prepared-world'
import { openedFact, PERMIT } from '@/test/commands/world-facts'
import { factJson, remark } from '@/test/store/facts-for-tests'

const OFFSET = '+01:00'

describe('search of the trail', () => {
  let world: Prepared
  const readingOf = async (actor: Actor) => {
    const desk = await openDesk(actor)
    return { desk, actor, roles: actor.rolesOn('any', desk.today(null)) }
  }
  const search = async (params: SearchParams, actor?: Actor, page = 1) => {
    const found = await loadAuditSearch(await readingOf(actor ?? (await world.as('auditor'))), params, page, OFFSET)
    if (!found.ok) throw new Error(found.error.code)
    return found.value
  }
  beforeAll(async () => {
    world = await openPreparedWorld()
  })
  afterAll(() => world.store.remove())

  test('nothing asked finds every fact in order of receipt, page by page', async () => {
    const first = await search({})
    expect(first.count).toBe(await world.count())
    expect(first.lines.map((one) => one.leaf)).toEqual(Array.from({ length: LINES_A_PAGE }, (_, at) => at))
    const second = await search({}, undefined, 2)
    expect(second.lines[0]?.leaf).toBe(LINES_A_PAGE)
    expect((await search({}, undefined, 999)).page).toBe(first.pageCount)
  })

  test('by person, repair, batch, act and record: all that stands there or cites it, and no more', async () => {
    const byPerson = await search({ person: 'L1' })
    expect(byPerson.count).toBeGreaterThan(2)
    expect(byPerson.lines.some((one) => one.observedBy === 'Person L1' && one.kind === 'recorded')).toBe(true)
    const byRepair = await search({ repair: 'R-1' })
    expect(byRepair.lines.map((one) => one.stream)).toContain('dossier:R-1')
    expect(byRepair.lines.some((one) => one.stream === 'repair:R-2')).toBe(false)
    const byBatch = await search({ batch: 'FP-2' })
    expect(new Set(byBatch.lines.map((one) => one.stream))).toEqual(new Set(['batch:FP-2']))
    expect((await search({ act: 'released' })).lines.map((one) => one.id)).toEqual([world.names.release])
    expect((await search({ act: 'recorded/permit' })).count).toBe(2)
    expect((await search({ act: 'recorded/cure' })).count).toBe(0)
    expect((await search({ act: 'recorded/permit', person: 'L1', repair: 'R-1' })).count).toBe(2)
  })

  test('by day observed and by day received', async () => {
    const observed = await search({ from: '2026-05-03', to: '2026-05-03' })
    expect(observed.lines.map((one) => one.id)).toEqual([KNOWN_FACT_ID])
    expect((await search({ from: '2026-05-03', to: '2026-05-03', basis: 'received' })).count).toBe(0)
    expect((await search({ from: '2026-05-12', to: '2026-05-12', basis: 'received' })).count).toBe(await world.count())
  })

  test('what can be no name, day or act is said, and nothing is searched', async () => {
    const wrong = await search({ repair: '../etc', from: '2026-02-31', act: 'dropped' })
    expect(wrong.faults.map((one) => one.field).sort()).toEqual(['act', 'from', 'repair'])
    expect(wrong.count).toBe(0)
    expect(await exportTrailSearch(await world.as('auditor'), { act: 'dropped' })).toMatchObject({
      ok: false,
      error: { code: 'invalid' },
    })
  })

  test('another tenant finds nothing of it: not by search, by id, nor in its own whole log', async () => {
    const everything = await search({}, world.foreign)
    expect(everything.lines.length).toBeGreaterThan(0)
    expect(JSON.stringify(everything)).not.toMatch(/tenant-a|R-1|FP-|Person /)
    expect((await search({ person: 'L1' }, world.foreign)).count).toBe(0)
    const reading = await readingOf(world.foreign)
    expect(await loadAuditFact(reading, world.names.record)).toEqual({ ok: false, error: { code: 'not-found' } })
    const log = await exportLog(world.foreign, {})
    if (!log.ok) throw new Error(log.error.code)
    const text = await new Response(log.value.body).text()
    expect(text).toContain('"tenant":"tenant-b"')
    expect(text).not.toMatch(/tenant-a|R-1|Person QI/)
  })

  test('the CSV holds every page of the search', async () => {
    const file = await exportTrailSearch(await world.as('inspector'), {})
    if (!file.ok) throw new Error(file.error.code)
    const lines = file.value.text.trimEnd().split('\r\n')
    expect(lines.length).toBe((await world.count()) + 1)
    expect(lines[0]?.startsWith('leaf,received at')).toBe(true)
    expect(file.value.text).toContain(KNOWN_FACT_ID)
  })

  test('the whole log gives the root of its own checkpoint, leaf by leaf', async () => {
    const log = await exportLog(await world.as('auditor'), {})
    if (!log.ok) throw new Error(log.error.code)
    const text = await new Response(log.value.body).text()
    expect(new TextEncoder().encode(text).length).toBe(log.value.sizeBytes)
    const lines = text.slice(0, -1).split('\n')
    const tree = growTree()
    for (let at = 1; at < lines.length - 1; at += 2) {
      const leaf = new TextEncoder().encode(lines[at])
      const parsed = parseLeaf(leaf)
      expect(parsed.ok && parsed.value.sha256).toBe(hexDigestOf(new TextEncoder().encode(lines[at + 1])))
      tree.add(hashOfLeaf(leaf))
    }
    const checkpoint = String(JSON.parse(lines.at(-1) ?? '""')).split('\n')
    expect(tree.size).toBe(Number(checkpoint[1]))
    expect(Buffer.from(tree.root()).toString('base64')).toBe(checkpoint[2])
    const bytes = new TextEncoder().encode(text)
    expect(await verifyFile(sourceOfBytes(bytes))).toMatchObject({ answer: 'intact', signer: 'not known' })
    const changed = new TextEncoder().encode(text.replace('out of date', 'in good date'))
    expect(await verifyFile(sourceOfBytes(changed))).toMatchObject({ answer: 'broken' })
  })

  test('a fact changed in the database is named where it is found', async () => {
    const { pool } = world.store.db
    const where = "where tenant = 'tenant-a' and id = $1"
    await pool.query(
      `update facts set bytes = convert_to(replace(convert_from(bytes, 'UTF8'), 'out of date', 'in good date'), 'UTF8') ${where}`,
      [KNOWN_FACT_ID],
    )
    const found = await search({ batch: 'FP-2' })
    expect(found.lines.filter((one) => one.isBroken).map((one) => one.id)).toEqual([KNOWN_FACT_ID])
    await pool.query(
      `update facts set bytes = convert_to(replace(convert_from(bytes, 'UTF8'), 'in good date', 'out of date'), 'UTF8') ${where}`,
      [KNOWN_FACT_ID],
    )
    expect((await search({ batch: 'FP-2' })).lines.some((one) => one.isBroken)).toBe(false)
  })

  test('projects where the reader is neither auditor nor inspector are left out, and their log is not given whole', async () => {
    const opened = openedFact('R-9')
    await world.put([
      remark('a project apart', 'project:P-9'),
      { ...opened, body: { ...(opened.body as object), project: 'project:P-9' } },
      factJson('repair:R-9', 'recorded', { point: '05' as never, attempt: 1, record: PERMIT as never }),
    ])
    const auditor = await world.as('auditor')
    const found = await search({})
    expect(found.reach).toMatchObject({ isWhole: false, shutProjects: ['project:P-9'] })
    expect(found.count).toBe((await world.count()) - 3)
    expect((await search({ repair: 'R-9' })).count).toBe(0)
    expect(found.options.repairs).not.toContain('R-9')
    const whole = actorOf({
      ...auditor,
      grants: auditor.grants.flatMap((one) => [one, { ...one, project: 'project:P-9' as typeof one.project }]),
    })
    const hidden = (await search({ repair: 'R-9', act: 'recorded/permit' }, whole)).lines[0]
    if (!hidden) throw new Error('not found by who may')
    expect(await openTrailFact(auditor, { id: hidden.id, part: 'fact.json' })).toMatchObject({
      error: { code: 'not-found' },
    })
    expect(await openTrailFact(whole, { id: hidden.id, part: 'fact.json' })).toMatchObject({ ok: true })
    expect(await exportLog(auditor, {})).toMatchObject({ ok: false, error: { code: 'not-found' } })
    const given = await exportLog(whole, {})
    expect(given.ok).toBe(true)
    if (given.ok) await given.value.body.cancel()
  })
})
