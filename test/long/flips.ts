import { fileURLToPath } from 'node:url'
import { contentsByHand } from '../verify/dossier-by-hand'
import { flipsNotSeen, seededNumbers } from '../verify/flip-bytes'
import { holderByHand, receivedByHand } from '../verify/holder-by-hand'
import { logByHand } from '../verify/log-by-hand'
import { check, signedFile } from '../verify/signed-by-hand'

const LARGE_PHOTO_BYTES = 60_000
const LARGE_FLIPS = 20_000

async function dossier(number: string, photoBytes: number): Promise<Uint8Array> {
  const holder = await holderByHand(7)
  const log = logByHand(receivedByHand(holder, photoBytes), holder.origin)
  const file = await signedFile(contentsByHand(log, holder, number), holder.identity)
  const { answer } = await check(file)
  if (answer !== 'intact') throw new Error(`The dossier of ${number} is ${answer} before any change`)
  return file
}

/** Change every byte of a small dossier and 20,000 bytes of a large one, one at a time, and tell each change that the checker did not see. Gives how many of the two failed. */
export async function runFlips(): Promise<number> {
  const number = seededNumbers(Number(process.env.UNDERWRAP_SEED ?? 11))
  const small = await dossier('MD-0043', 60)
  const large = await dossier('MD-0042', LARGE_PHOTO_BYTES)
  const steps: [string, Uint8Array, number[]][] = [
    ['every byte of a small dossier', small, Array.from({ length: small.length }, (_, at) => at)],
    ['20,000 bytes of a large dossier', large, Array.from({ length: LARGE_FLIPS }, () => number(large.length))],
  ]
  let failed = 0
  for (const [name, file, places] of steps) {
    const started = performance.now()
    const { checkedCount, notSeen } = await flipsNotSeen(file, places, (byte) => [byte ^ (1 + number(255))])
    const seconds = ((performance.now() - started) / 1000).toFixed(1)
    console.log(
      `${notSeen.length === 0 ? 'pass' : 'FAIL'}  ${name} (${file.length} bytes) changed: ${checkedCount} checks, ${notSeen.length} not seen, ${seconds} s`,
    )
    for (const one of notSeen.slice(0, 40)) console.log(`      ${one}`)
    if (notSeen.length > 0) failed += 1
  }
  return failed
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await runFlips()
