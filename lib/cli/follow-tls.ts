import { lineOf } from './plain-error'
import { readTls, type Tls, type TlsFiles } from './tls-files'

const LOOK_EACH_MS = 10_000

export type Following = {
  files: TlsFiles
  present: Tls
  take(tls: Tls): void
  say(line: string): void
  eachMs?: number
}

/**
 * Look at the files again and again, and take up a renewed certificate without a restart. What does not fit is told once and the one in use is kept: a renewal writes
 * two files, one after the other. Reading them is sure where watching is not: behind links and on mounted folders. @returns stops it
 */
export function followTls({ files, present, take, say, eachMs = LOOK_EACH_MS }: Following): () => void {
  let inUse = present
  let told = ''
  const tell = (line: string) => {
    if (line !== told) say(line)
    told = line
  }
  const look = () => {
    try {
      const found = readTls(files, Date.now())
      if (found.cert === inUse.cert && found.key === inUse.key) return
      take(found)
      inUse = found
      tell(`A renewed certificate is in use, to ${found.notAfter.toISOString()}.`)
    } catch (cause) {
      tell(`The certificate in use stays, to ${inUse.notAfter.toISOString()}. ${lineOf(cause)}`)
    }
  }
  const tick = setInterval(look, eachMs)
  tick.unref()
  return () => clearInterval(tick)
}
