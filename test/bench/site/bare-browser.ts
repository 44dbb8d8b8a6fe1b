import { spawn } from 'node:child_process'
import type { Readable, Writable } from 'node:stream'
import { SLOWDOWN } from './bench-browser'

type Answer = {
  id?: number
  sessionId?: string
  method?: string
  params?: unknown
  result?: unknown
  error?: { message: string }
}

/** A browser told what to do over its own wire and by nothing else: no driver lays scripts or worlds of its own into the pages whose start is timed. */
export type BareBrowser = {
  /** A fresh page on a slowed processor; the service worker sleeps until it is asked. */
  coldPage(slowdown?: number): Promise<BarePage>
  close(): Promise<void>
}

export type BarePage = {
  /** Run a constant text in every document of the page before its own scripts. */
  runFirst(script: string): Promise<void>
  goto(address: string): Promise<void>
  /** The value of an expression in the page, awaited. */
  read(expression: string): Promise<unknown>
  /** What the browser did between now and the call of what is returned, in its own trace format. */
  trace(): Promise<() => Promise<unknown[]>>
  close(): Promise<void>
}

const PIPE = ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] as const

/** Open a browser over a profile that no other browser holds. */
export async function openBareBrowser(profile: string): Promise<BareBrowser> {
  const child = spawn(
    process.env.CHROMIUM ?? '/usr/bin/chromium',
    [
      '--headless',
      '--no-sandbox',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-quic',
      '--disable-sync',
      '--password-store=basic',
      '--window-size=390,844',
      '--remote-debugging-pipe',
      `--user-data-dir=${profile}`,
      'about:blank',
    ],
    { stdio: [...PIPE] },
  )
  const gone = new Promise<void>((settle) => child.once('exit', () => settle()))
  const wire = wireOver(child.stdio[3] as Writable, child.stdio[4] as Readable)
  return {
    async coldPage(slowdown = SLOWDOWN) {
      const { targetId } = (await wire.send('Target.createTarget', { url: 'about:blank' })) as { targetId: string }
      const attached = await wire.send('Target.attachToTarget', { targetId, flatten: true })
      const { sessionId } = attached as { sessionId: string }
      const tell = (method: string, params: object = {}) => wire.send(method, params, sessionId)
      await tell('ServiceWorker.enable')
      await tell('ServiceWorker.stopAllWorkers')
      await tell('ServiceWorker.disable')
      await tell('Emulation.setDeviceMetricsOverride', { width: 390, height: 844, deviceScaleFactor: 1, mobile: true })
      await tell('Emulation.setCPUThrottlingRate', { rate: slowdown })
      await tell('Page.enable')
      return {
        async runFirst(source) {
          await tell('Page.addScriptToEvaluateOnNewDocument', { source })
        },
        async goto(url) {
          const { errorText } = (await tell('Page.navigate', { url })) as { errorText?: string }
          if (errorText) throw new Error(`${url}: ${errorText}`)
        },
        async read(expression) {
          const { result, exceptionDetails } = (await tell('Runtime.evaluate', {
            expression,
            awaitPromise: true,
            returnByValue: true,
          })) as { result: { value?: unknown }; exceptionDetails?: { text: string } }
          if (exceptionDetails) throw new Error(exceptionDetails.text)
          return result.value
        },
        async trace() {
          const events: unknown[] = []
          const stop = wire.on('Tracing.dataCollected', sessionId, (params) => {
            events.push(...(params as { value: unknown[] }).value)
          })
          await tell('Tracing.start', {
            transferMode: 'ReportEvents',
            traceConfig: {
              includedCategories: ['devtools.timeline', 'loading', 'blink.user_timing', 'toplevel', 'v8'],
            },
          })
          return async () => {
            const done = new Promise<void>((settle) => {
              const end = wire.on('Tracing.tracingComplete', sessionId, () => {
                end()
                settle()
              })
            })
            await tell('Tracing.end')
            await done
            stop()
            return events
          }
        },
        async close() {
          await wire.send('Target.closeTarget', { targetId })
        },
      }
    },
    async close() {
      await wire.send('Browser.close')
      await gone
    },
  }
}

type Heard = { method: string; sessionId: string; hear(params: unknown): void }

function wireOver(out: Writable, back: Readable) {
  const waiting = new Map<number, { settle(result: unknown): void; fail(cause: Error): void }>()
  const heard = new Set<Heard>()
  let count = 0
  let rest = ''
  back.setEncoding('utf8').on('data', (text: string) => {
    const parts = (rest + text).split('\0')
    rest = parts.pop() ?? ''
    for (const part of parts) take(JSON.parse(part))
  })
  const take = ({ id, method, params, result, error, sessionId }: Answer) => {
    const asked = id === undefined ? undefined : waiting.get(id)
    if (id !== undefined) waiting.delete(id)
    if (error) asked?.fail(new Error(error.message))
    else asked?.settle(result)
    for (const one of heard) if (one.method === method && one.sessionId === sessionId) one.hear(params)
  }
  return {
    send(method: string, params: object = {}, sessionId?: string): Promise<unknown> {
      count += 1
      const id = count
      return new Promise((settle, fail) => {
        waiting.set(id, { settle, fail })
        out.write(`${JSON.stringify({ id, method, params, ...(sessionId ? { sessionId } : {}) })}\0`)
      })
    },
    on(method: string, sessionId: string, hear: (params: unknown) => void): () => void {
      const one = { method, sessionId, hear }
      heard.add(one)
      return () => heard.delete(one)
    },
  }
}
