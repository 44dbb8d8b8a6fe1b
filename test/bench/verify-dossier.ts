import { fork } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { nodeHasher, openFileSource } from '@/lib/cli/file-source'
import { PersonId, Sha256, StreamId } from '@/lib/domain/facts/fact'
import { citesOf } from '@/lib/domain/fold/cites-of'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { buildDossier } from '@/lib/dossier/build-dossier'
import { dossierSigner } from '@/lib/dossier/sign/dossier-signer'
import { base64Of } from '@/lib/evidence/base64'
import { sha256OfFile } from '@/lib/evidence/sha256'
import { createFolderPhotoStore } from '@/lib/photo/folder-photo-store'
import { DEMO_START } from '@/lib/server/demo/demo-time'
import { verifyFile } from '@/lib/verify/verify-file'
import { holderByHand, receivedByHand } from '../verify/holder-by-hand'
import { logByHand } from '../verify/log-by-hand'
import { attachPhotos } from './verify-photos'

const PHOTO_COUNT = 1000
const ROUNDS = 5
const BOUND = 3
const MOST_MB = 500

type Measured = { floorMs: number; verifyMs: number; peakMB: number }

/**
 * Measure the check of a signed dossier with 1,000 photos against hashing the same file as the record does (`sha256OfFile`), in the same process and in turns. The ratio is
 * of the fastest of five rounds; a peak of memory over 500 MB counts as a ratio over the bound.
 */
export async function benchVerify(): Promise<{ name: string; ratio: number; bound: number; lines: string[] }> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-verify-'))
  try {
    const path = join(folder, 'dossier.pdf')
    const sizeBytes = await makeDossier(folder, path)
    const { floorMs, verifyMs, peakMB } = await measureInChild(path)
    const ratio = verifyMs / floorMs
    return {
      name: 'verify a 1,000-photo dossier',
      ratio: Math.max(ratio, peakMB > MOST_MB ? (BOUND * peakMB) / MOST_MB : 0),
      bound: BOUND,
      lines: [
        `floor ${(floorMs / 1000).toFixed(2)} s (${(sizeBytes / 1e6).toFixed(0)} MB read and hashed)`,
        `check ${(verifyMs / 1000).toFixed(2)} s, intact; ratio ${ratio.toFixed(2)}`,
        `peak memory ${peakMB.toFixed(0)} MB of ${MOST_MB}`,
      ],
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** A sealed dossier of MD-0041 with a thousand photos more, built and signed as the server does. */
async function makeDossier(folder: string, path: string): Promise<number> {
  const photos = join(folder, 'photos')
  const holder = await holderByHand(7)
  const receipt = { receivedAt: DEMO_START, receivedBy: PersonId.parse('tobias-wrenfield') }
  const attached = (await attachPhotos(photos, PHOTO_COUNT)).map((fact) => ({ fact, ...receipt }))
  const log = logByHand([...receivedByHand(holder), ...attached], holder.origin)
  const own = log.facts.filter((one) => one.fact.stream === 'repair:MD-0041')
  const read = new Set(['repair:MD-0041', 'key:log', 'key:signature', ...own.flatMap((one) => citesOf(one.fact))])
  const logged = log.facts.filter((one) => read.has(one.fact.stream))
  const facts = logged.map((one) => one.fact)
  const leaves = logged.map((one) => JSON.parse(new TextDecoder().decode(one.leafBytes)))
  const receipts = new Map(facts.map((fact, index) => [fact.id, leaves[index]]))
  const sha256Of = new Map(facts.map((fact, index) => [fact.id, Sha256.parse(leaves[index].sha256)]))
  const size = log.facts.length
  const lengths = new Map<StreamId, number>()
  for (const { stream } of facts) lengths.set(stream, (lengths.get(stream) ?? 0) + 1)
  const state = foldRepair(facts, StreamId.parse('repair:MD-0041'), DEMO_START, {
    receipts: Object.fromEntries(receipts),
    likeness: [],
    sha256Of: (id) => sha256Of.get(id),
  })
  const built = await buildDossier(
    {
      state,
      facts,
      receipts,
      sha256Of,
      head: { kind: 'for review' },
      organisation: 'Bench',
      isDemo: true,
      seal: {
        tenant: log.tenant,
        checkpoint: {
          origin: log.origin,
          size,
          root: base64Of(log.root(size)),
          text: log.checkpoint(holder.key),
          vkey: holder.key.vkey.text,
        },
        facts: logged.map(({ index, leafBytes, factBytes }) => ({
          index,
          leafBytes,
          factBytes,
          proof: log.inclusion(index, size),
        })),
        streams: [...lengths].map(([stream, length]) => ({ stream, length })),
        likeness: [],
        earlier: [],
        signer: dossierSigner(holder.identity, null, new Date('2026-05-29T07:00:00Z')),
        checkAddress: 'http://localhost:3000/check',
      },
    },
    createFolderPhotoStore(photos),
    path,
  )
  return built.sizeBytes
}

function measureInChild(path: string): Promise<Measured> {
  return new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), [path])
    child.on('message', (measured) => resolve(measured as Measured))
    child.on('error', reject)
    child.on('exit', (code) => code !== 0 && reject(new Error(`The check ended with ${code}`)))
  })
}

async function measure(path: string): Promise<void> {
  const [floors, checks]: [number[], number[]] = [[], []]
  for (let round = 0; round < ROUNDS; round += 1) {
    const started = performance.now()
    await sha256OfFile(path)
    const middle = performance.now()
    const source = await openFileSource(path)
    const { answer, breaks } = await verifyFile(source, { hasher: nodeHasher })
    floors.push(middle - started)
    checks.push(performance.now() - middle)
    await source.close()
    if (answer !== 'intact') throw new Error(`The dossier is ${answer}: ${JSON.stringify(breaks[0])}`)
  }
  const peak = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]
  process.send?.({
    floorMs: Math.min(...floors),
    verifyMs: Math.min(...checks),
    peakMB: Number(peak) / 1024,
  } satisfies Measured)
}

if (process.argv[1] === fileURLToPath(import.meta.url) && process.send && process.argv[2])
  await measure(process.argv[2])
else if (process.argv[1] === fileURLToPath(import.meta.url)) console.log(await benchVerify())
