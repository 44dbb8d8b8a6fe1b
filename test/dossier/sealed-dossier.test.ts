import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { parseCheckpoint } from '@/lib/evidence/checkpoint'
import { hashOfLeaf } from '@/lib/evidence/leaf'
import { isConsistent, isIncluded, parseProof } from '@/lib/evidence/verify-proof'
import { issueDossier } from '@/lib/server/dossier/issue-dossier'
import { writeReviewDossier } from '@/lib/server/dossier/write-review-dossier'
import { loadRepair } from '@/lib/server/store/load-repair'
import { loadStream } from '@/lib/server/store/load-stream'
import { linesOf, readSealed, type SealedFile, streamOfObject } from './read-sealed'
import { ACTOR, REPAIR, type SealedWorld, sealedWorld } from './sealed-world'

let world: SealedWorld
let copy: SealedFile
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
const rootOf = (file: SealedFile): Uint8Array => {
  const checkpoint = parseCheckpoint(file.files.get('checkpoint.txt')?.toString() ?? '')
  if (!checkpoint.ok) throw new Error(checkpoint.error.at)
  return checkpoint.value.root
}

beforeAll(async () => {
  world = await sealedWorld()
  const written = await writeReviewDossier(world.store, world.store.tenant, REPAIR, world.at('copy.pdf'))
  if (!written.ok) throw new Error(written.error.code)
  copy = readSealed(world.at('copy.pdf'))
})
afterAll(() => world.remove())

test('objects follow one another from 1 without a gap, then one table and one trailer, then nothing', () => {
  const numbers = [...copy.objects.keys()].sort((a, b) => a - b)
  expect(numbers).toEqual(Array.from({ length: numbers.length }, (_, at) => at + 1))
  const parts =
    /^xref\n0 (\d+)\n((?:\d{10} \d{5} [fn] \n)+)trailer\n<<[^>]*>[^>]*>?[\s\S]*?>>\nstartxref\n(\d+)\n%%EOF\n$/.exec(
      copy.end,
    )
  expect(Number(parts?.[1])).toBe(numbers.length + 1)
  expect(parts?.[2]?.length).toBe(20 * (numbers.length + 1))
  expect(Number(parts?.[3])).toBe(copy.bytes.length - copy.end.length)
  expect(copy.end).not.toMatch(/\/Prev|\/Encrypt/)
  expect(copy.bytes.toString('latin1')).not.toMatch(/\/Type \/(ObjStm|XRef)/)
})

test('attachments are the six of the format in their order, with the digests that the manifest states', () => {
  expect(copy.names).toEqual([
    'checkpoint.txt',
    'facts.jsonl',
    'format.md',
    'inclusion.jsonl',
    'leaves.jsonl',
    'manifest.json',
  ])
  expect(copy.manifest.files).toEqual(
    copy.names
      .filter((name) => name !== 'manifest.json')
      .map((name) => {
        const bytes = copy.files.get(name) ?? Buffer.alloc(0)
        return { name, sha256: sha256(bytes), sizeBytes: bytes.length }
      }),
  )
  expect(copy.files.get('format.md')?.equals(readFileSync('lib/evidence/FORMAT.md'))).toBe(true)
})

test('every fact that the fold read is there with the bytes that are stored, all positions, each included in the checkpoint', async () => {
  const facts = linesOf(copy.files.get('facts.jsonl'))
  const leaves = linesOf(copy.files.get('leaves.jsonl')).map((line) => ({ line, leaf: JSON.parse(line) }))
  const proofs = linesOf(copy.files.get('inclusion.jsonl')).map((line) => JSON.parse(line))
  expect(leaves.length).toBe(facts.length)
  expect(proofs.length).toBe(facts.length)
  const root = rootOf(copy)
  const { size } = copy.manifest.asOf
  for (const [at, fact] of facts.entries()) {
    const leaf = leaves[at]
    expect(leaf?.leaf.sha256).toBe(sha256(Buffer.from(fact)))
    const proof = parseProof(proofs[at]?.proof ?? [])
    const leafHash = hashOfLeaf(Buffer.from(leaf?.line ?? ''))
    expect(proof && isIncluded({ index: proofs[at].index, size, leafHash, proof, root })).toBe(true)
  }
  const indexes = proofs.map((one) => one.index)
  expect([...indexes].sort((a, b) => a - b)).toEqual(indexes)
  const read = await loadRepair(world.store, world.store.tenant, REPAIR)
  const streams = [...(read?.heads.map((one) => one.stream) ?? []), 'key:log', 'key:signature'].sort()
  expect(copy.manifest.streams.map((one) => one.stream)).toEqual(streams)
  for (const { stream, length } of copy.manifest.streams) {
    const { facts: stored } = await loadStream(world.store, world.store.tenant, stream as typeof REPAIR)
    expect(length).toBe(stored.length)
    const positions = leaves.filter((one) => one.leaf.stream === stream).map((one) => one.leaf.position)
    expect(positions).toEqual(Array.from({ length }, (_, index) => index + 1))
  }
})

test('photo objects are the renditions byte for byte; the manifest names each of them and every photo that is missing', () => {
  const drawn = [...copy.objects].filter(([, value]) => value.subarray(0, 400).includes('/DCTDecode'))
  const named = new Map(
    copy.manifest.photos.flatMap((one) => (one.object === null ? [] : [[one.object, one] as const])),
  )
  expect(drawn.length).toBe(6)
  expect([...named.keys()].sort()).toEqual(drawn.map(([no]) => no).sort())
  for (const [no, value] of drawn) expect(sha256(streamOfObject(value))).toBe(named.get(no)?.rendition.sha256)
  const missing = copy.manifest.photos.filter((one) => one.object === null)
  expect(missing.length).toBeGreaterThan(0)
  expect(missing.every((one) => one.printed === 'missing')).toBe(true)
})

test('verdicts and states are those of the fold, criterion by criterion', async () => {
  const state = (await loadRepair(world.store, world.store.tenant, REPAIR, copy.manifest.asOf.moment))?.state
  const judged = state?.points.flatMap((point) =>
    point.attempts.flatMap((attempt) =>
      attempt.criteria.map((one) => `${point.no}/${attempt.attempt} ${one.criterion.id} ${one.verdict}`),
    ),
  )
  const stated = copy.manifest.verdicts.map((one) => `${one.point}/${one.attempt} ${one.criterion} ${one.verdict}`)
  expect(stated.length).toBeGreaterThan(50)
  expect([...stated].sort()).toEqual([...(judged ?? [])].sort())
  expect(copy.manifest).toMatchObject({ v: 1, kind: 'for review', revision: null, purpose: null, earlier: [] })
})

test('an issue holds its checkpoint in its fact, and the next one proves that its log goes on from there', async () => {
  const { store } = world
  const order = { repair: REPAIR, purpose: 'final', changes: [] as string[], actor: ACTOR }
  const first = await issueDossier(store, store.tenant, order)
  const second = await issueDossier(store, store.tenant, { ...order, changes: ['issued again'] })
  if (!first.ok || !second.ok) throw new Error('not issued')
  const [early, late] = [first, second].map((one) => readSealed(store.photos.path?.(one.value.sha256) ?? ''))
  if (!early || !late) throw new Error('not stored')
  const { facts } = await loadStream(store, store.tenant, 'dossier:MD-0042' as typeof REPAIR)
  const body = facts[0]?.kind === 'dossier-issued' ? facts[0].body : null
  expect(body?.log).toEqual({ size: early.manifest.asOf.size, root: Buffer.from(rootOf(early)).toString('base64') })
  const [earlier] = late.manifest.earlier
  expect(late.manifest).toMatchObject({ kind: 'issue', revision: 1, purpose: 'final' })
  expect(earlier).toMatchObject({ revision: 0, sha256: first.value.sha256, ...body?.log })
  const proof = parseProof(earlier?.consistency ?? [])
  const claim = {
    fromSize: earlier?.size ?? 0,
    fromRoot: rootOf(early),
    size: late.manifest.asOf.size,
    root: rootOf(late),
  }
  expect(proof && isConsistent({ ...claim, proof })).toBe(true)
})
