import { fork } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { open, readFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { StreamId } from '@/lib/domain/facts/fact'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { buildDossier } from '@/lib/dossier/build-dossier'
import { createFolderPhotoStore } from '@/lib/photo/folder-photo-store'
import { pictureEngine } from '@/lib/photo/picture-engine'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import { photoState, SIZE } from './dossier-photos'
import { sealForBench } from './dossier-seal'

const PHOTO_COUNT = 1000
const SCENES = 20
const ROUNDS = 3
const BOUND = 2.5
const MOST_MB = 300

type Answer = { ms: number; peakMB: number; sizeBytes: number; pageCount: number }

/**
 * Measure the build of a dossier with 1,000 ready renditions, sealed and signed, in a process of its own, against reading, hashing and writing the same bytes with a sync in the same run. The
 * ratio is of the fastest of three rounds, each of both in turn; a peak of memory over 300 MB counts as a ratio over the bound.
 */
export async function benchDossier(): Promise<{ name: string; ratio: number; bound: number; lines: string[] }> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-dossier-'))
  try {
    const digests = await makeRenditions(folder)
    writeFileSync(join(folder, 'digests.json'), JSON.stringify(digests))
    const [floors, answers]: [number[], Answer[]] = [[], []]
    for (let round = 0; round < ROUNDS; round++) {
      floors.push(await floorMs(folder, digests))
      answers.push(await buildInChild(folder))
    }
    const floor = Math.min(...floors)
    const build = Math.min(...answers.map((one) => one.ms))
    const peakMB = Math.max(...answers.map((one) => one.peakMB))
    const [{ sizeBytes, pageCount } = { sizeBytes: 0, pageCount: 0 }] = answers
    const lines = [
      `floor ${(floor / 1000).toFixed(2)} s (1,000 renditions read, hashed and written with a sync)`,
      `build ${(build / 1000).toFixed(2)} s for ${pageCount} sheets, ${(sizeBytes / 1e6).toFixed(0)} MB; ratio ${(build / floor).toFixed(2)}`,
      `peak memory ${peakMB.toFixed(0)} MB of ${MOST_MB}`,
    ]
    return {
      name: 'dossier of 1,000 photos',
      ratio: Math.max(build / floor, peakMB > MOST_MB ? (BOUND * peakMB) / MOST_MB : 0),
      bound: BOUND,
      lines,
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Twenty scenes with the bytes of real renditions (about 0.35 MB), each reuse made another file by a comment segment. */
async function makeRenditions(folder: string): Promise<string[]> {
  const store = createFolderPhotoStore(join(folder, 'photos'))
  const scenes = await Promise.all(
    Array.from({ length: SCENES }, (_, at) =>
      pictureEngine({
        create: {
          width: 700 + at,
          height: 525,
          channels: 3,
          background: '#808080',
          noise: { type: 'gaussian', mean: 128, sigma: 34 },
        },
      })
        .png({ compressionLevel: 0 })
        .toBuffer()
        .then((png) =>
          pictureEngine(png).resize(SIZE.widthPx, SIZE.heightPx, { fit: 'fill' }).jpeg({ quality: 80 }).toBuffer(),
        ),
    ),
  )
  return Array.from({ length: PHOTO_COUNT }, (_, at) => {
    const scene = scenes[at % SCENES] ?? Buffer.alloc(0)
    const comment = Buffer.from(`photo ${at}`)
    const bytes = Buffer.concat([
      scene.subarray(0, 2),
      Buffer.from([0xff, 0xfe, 0, comment.length + 2]),
      comment,
      scene.subarray(2),
    ])
    const sha256 = createHash('sha256').update(bytes).digest('hex')
    mkdirSync(dirname(store.path(sha256)), { recursive: true })
    writeFileSync(store.path(sha256), bytes)
    return sha256
  })
}

async function floorMs(folder: string, digests: readonly string[]): Promise<number> {
  const store = createFolderPhotoStore(join(folder, 'photos'))
  const path = join(folder, 'floor')
  const started = performance.now()
  const file = await open(path, 'w')
  for (const sha256 of digests) {
    const bytes = await readFile(store.path(sha256))
    createHash('sha256').update(bytes).digest('hex')
    await file.writeFile(bytes)
  }
  await file.sync()
  await file.close()
  const ms = performance.now() - started
  rmSync(path)
  return ms
}

function buildInChild(folder: string): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), [folder])
    child.on('message', (answer) => resolve(answer as Answer))
    child.on('error', reject)
    child.on('exit', (code) => code !== 0 && reject(new Error(`The build ended with ${code}`)))
  })
}

/** The peak of this process alone: what the system tells of a child through its usage may be the parent's, carried over when the child began. */
function peakMemoryMB(): number {
  const told = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]
  if (!told) throw new Error('This system does not tell the peak of memory of a process')
  return Number(told) / 1024
}

async function buildAndAnswer(folder: string): Promise<void> {
  const digests: string[] = JSON.parse(readFileSync(join(folder, 'digests.json'), 'utf8'))
  const known = demoFacts().facts.map((one) => one.fact)
  const state = foldRepair(known, StreamId.parse('repair:MD-0041'), DEMO_START)
  const photos = digests.map(photoState)
  const facts = [...known.filter((fact) => fact.kind !== 'photo-attached'), ...photos.map((photo) => photo.fact)]
  const seal = await sealForBench(facts)
  const points = state.points.map((point) =>
    point.no === '17'
      ? { ...point, attempts: point.attempts.map((attempt) => ({ ...attempt, photos })) }
      : { ...point, attempts: point.attempts.map((attempt) => ({ ...attempt, photos: [] })) },
  )
  const started = performance.now()
  const path = join(folder, 'dossier.pdf')
  const built = await buildDossier(
    {
      state: { ...state, points },
      facts,
      receipts: new Map(),
      sha256Of: new Map(),
      head: { kind: 'for review' },
      organisation: 'Bench',
      isDemo: true,
      seal,
    },
    createFolderPhotoStore(join(folder, 'photos')),
    path,
  )
  const ms = performance.now() - started
  if (built.unreadablePhotos.length > 0) throw new Error('A rendition could not be used')
  rmSync(path)
  process.send?.({
    ms,
    peakMB: peakMemoryMB(),
    sizeBytes: built.sizeBytes,
    pageCount: built.pageCount,
  } satisfies Answer)
}

if (process.argv[1] === fileURLToPath(import.meta.url) && process.send && process.argv[2])
  await buildAndAnswer(process.argv[2])
