import { spawn } from 'node:child_process'
import { get } from 'node:https'
import { connect, createServer } from 'node:net'
import { join } from 'node:path'
import { followTls } from './follow-tls'
import { type Front, startHttpsFront } from './https-front'
import { PlainError } from './plain-error'
import type { Tls, TlsFiles } from './tls-files'

export type WebServing = {
  port: string
  /** With a certificate the app listens on loopback, behind our own TLS front. */
  secure: { files: TlsFiles; tls: Tls; plainPort: number | null } | null
  whenReady(): void
}

/**
 * Run `next start` until it ends or we are told to stop. `whenReady` is called once it answers. @returns the exit code: 0 after a stop that was asked for, or when the
 * app is served on this port already. @throws PlainError when a port cannot be had
 */
export async function runWebServer({ port: said, secure, whenReady }: WebServing): Promise<number> {
  const port = Number(said)
  if (await isTaken(port)) {
    if (!(await isOurs(port, secure !== null)))
      throw new PlainError(`Port ${port} is taken: stop what runs there, or choose another with PORT.`)
    process.stdout.write('It is being served already.\n')
    whenReady()
    return 0
  }
  const innerPort = secure ? await freePort() : port
  const child = spawn(
    process.execPath,
    [
      join('node_modules', 'next', 'dist', 'bin', 'next'),
      'start',
      '-p',
      String(innerPort),
      ...(secure ? ['-H', '127.0.0.1'] : []),
    ],
    {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: {
        ...process.env,
        PORT: String(innerPort),
        UNDERWRAP_PUBLIC_PORT: said,
        NODE_ENV: 'production',
        NEXT_TELEMETRY_DISABLED: '1',
      },
    },
  )
  let isStopping = false
  const stop = () => {
    isStopping = true
    child.kill('SIGTERM')
  }
  process.on('SIGINT', stop)
  process.on('SIGTERM', stop)
  let front: Front | null = null
  const ended = new Promise<number>((settle, fail) => {
    child.on('error', fail)
    child.on('close', (code) => {
      front?.close()
      settle(isStopping ? 0 : (code ?? 1))
    })
  })
  const ready = async () => {
    while (!isStopping && child.exitCode === null && child.signalCode === null) {
      if (await isTaken(innerPort)) {
        front = secure && (await startFront(secure, port, innerPort))
        return whenReady()
      }
      await new Promise((settle) => setTimeout(settle, 100))
    }
  }
  const [code] = await Promise.all([
    ended,
    ready().catch((cause: unknown) => {
      stop()
      throw cause
    }),
  ])
  return code
}

async function startFront(
  { files, tls, plainPort }: NonNullable<WebServing['secure']>,
  port: number,
  innerPort: number,
): Promise<Front> {
  const front = await startHttpsFront({ tls, port, innerPort, plainPort })
  const say = (line: string) => process.stderr.write(`underwrap: ${line}\n`)
  const still = followTls({ files, present: tls, take: front.renew, say })
  return {
    ...front,
    close() {
      still()
      front.close()
    },
  }
}

/** Whether what answers on a port is this app, by its sign-in page. */
async function isOurs(port: number, isSecure: boolean): Promise<boolean> {
  const page = isSecure
    ? await pageOverTls(port)
    : await fetch(`http://127.0.0.1:${port}/sign-in`, { signal: AbortSignal.timeout(10_000) }).then(
        (answer) => answer.text(),
        () => '',
      )
  return page.includes('Underwrap')
}

/** The certificate names people's address, not this one, and nothing is told to who answers: it is not checked. */
function pageOverTls(port: number): Promise<string> {
  return new Promise((settle) => {
    const asked = get(
      { host: '127.0.0.1', port, path: '/sign-in', rejectUnauthorized: false, timeout: 10_000 },
      async (answer) => settle((await answer.toArray()).join('')),
    )
    asked.on('timeout', () => asked.destroy())
    asked.on('error', () => settle(''))
  })
}

function freePort(): Promise<number> {
  return new Promise((settle, fail) => {
    const probe = createServer().once('error', fail)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => settle(typeof address === 'object' && address ? address.port : 0))
    })
  })
}

function isTaken(port: number): Promise<boolean> {
  return new Promise((settle) => {
    const socket = connect({ port, host: '127.0.0.1' })
    socket.once('connect', () => {
      socket.destroy()
      settle(true)
    })
    socket.once('error', () => settle(false))
  })
}
