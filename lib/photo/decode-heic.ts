import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { done, type Result, refused } from '@/lib/domain/result'
import type { PhotoRefusal } from '@/lib/photo/photo-intake'
import { decoderReason, type Raster } from '@/lib/photo/picture-engine'
import { createSlots } from '@/lib/photo/slots'

type HeicOutcome =
  | Exclude<PhotoRefusal, { code: 'empty' | 'too-large' | 'unknown-type' }>
  | ({ code: 'decoded' } & Omit<Raster, 'channels'>)

const TIME_LIMIT_MS = 60_000
const oneAtATime = createSlots(1)

/**
 * Decode a HEIC photo to RGBA, upright by the file's own rotation, in a worker thread; one at a time in this process.
 * A minute without an answer is taken as damage. Refuses `damaged`, `too-many-pixels`.
 * @throws Error when the worker file is not found: the process was not started in the project folder
 */
export function decodeHeic(bytes: Uint8Array, maxPixels: number): Promise<Result<Raster, PhotoRefusal>> {
  return oneAtATime.run(async () => {
    const outcome = await runWorker(bytes, maxPixels)
    if (outcome.code !== 'decoded') return refused(outcome)
    const { pixels, widthPx, heightPx } = outcome
    return done({ pixels, widthPx, heightPx, channels: 4 })
  })
}

function runWorker(bytes: Uint8Array, maxPixels: number): Promise<HeicOutcome> {
  const workerFile = join(/* turbopackIgnore: true */ process.cwd(), 'lib', 'photo', 'heic-worker.mjs')
  return new Promise((resolve, reject) => {
    const worker = new Worker(/* turbopackIgnore: true */ workerFile, {
      workerData: { bytes, maxPixels },
      resourceLimits: { maxOldGenerationSizeMb: 256 },
      execArgv: [],
      stdout: true,
      stderr: true,
    })
    const settle = (outcome: HeicOutcome) => {
      clearTimeout(timer)
      resolve(outcome)
      void worker.terminate()
    }
    const timer = setTimeout(
      () => settle({ code: 'damaged', reason: 'decoding took longer than a minute' }),
      TIME_LIMIT_MS,
    )
    worker.once('message', (outcome: HeicOutcome) =>
      settle(outcome.code === 'damaged' ? { ...outcome, reason: decoderReason(outcome.reason) } : outcome),
    )
    worker.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'MODULE_NOT_FOUND' && error.code !== 'ERR_MODULE_NOT_FOUND')
        settle({ code: 'damaged', reason: decoderReason(error) })
      else {
        clearTimeout(timer)
        reject(new Error('The HEIC decoder is missing', { cause: error }))
      }
    })
    worker.once('exit', () => settle({ code: 'damaged', reason: 'the decoder ended without an answer' }))
  })
}
