import { readFileSync } from 'node:fs'
import { nodeHasher, openFileSource } from '@/lib/cli/file-source'
import { verifyFile } from '@/lib/verify/verify-file'

/** Answers each file named on the command line and tells the time of each and the peak of memory of this process, as JSON. */
const told: { path: string; answer: string; codes: string[]; ms: number }[] = []
for (const path of process.argv.slice(2)) {
  const source = await openFileSource(path)
  const started = performance.now()
  const { answer, breaks } = await verifyFile(source, { hasher: nodeHasher })
  told.push({ path, answer, codes: breaks.map((one) => one.code), ms: performance.now() - started })
  await source.close()
}
const peak = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]
console.log(JSON.stringify({ told, peakMB: Number(peak) / 1024 }))
