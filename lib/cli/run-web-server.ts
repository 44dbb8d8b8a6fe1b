import { spawn } from 'node:child_process'
import { connect } from 'node:net'
import { join } from 'node:path'
import { PlainError } from './plain-error'

/**
 * Run `next start` until it ends or we are told to stop. `whenReady` is called once it answers.
 * @returns the exit code: 0 after a stop that was asked for, or when the app is served on this port already
 */
export async function runWebServer(options: { port: string; whenReady(): void }): Promise<number> {
  const port = Number(options.port)
  if (await isTaken(port)) {
    if (!(await isOurs(port)))
      throw new PlainError(`Port ${port} is taken: stop what runs there, or choose another with PORT.`)
    process.stdout.write('It is being served already.\n')
    options.whenReady()
    return 0
  }
  const child = spawn(
    process.execPath,
    [join('node_modules', 'next', 'dist', 'bin', 'next'), 'start', '-p', options.port],
    {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, PORT: options.port, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
    },
  )
  let isStopping = false
  const stop = () => {
    isStopping = true
    child.kill('SIGTERM')
  }
  process.on('SIGINT', stop)
  process.on('SIGTERM', stop)
  const ended = new Promise<number>((settle, fail) => {
    child.on('error', fail)
    child.on('close', (code) => settle(isStopping ? 0 : (code ?? 1)))
  })
  const ready = async () => {
    while (!isStopping && child.exitCode === null && child.signalCode === null) {
      if (await isTaken(port)) return options.whenReady()
      await new Promise((settle) => setTimeout(settle, 100))
    }
  }
  const [code] = await Promise.all([ended, ready()])
  return code
}

/** Whether what answers on a port is this app, by its sign-in page. */
async function isOurs(port: number): Promise<boolean> {
  const page = await fetch(`http://127.0.0.1:${port}/sign-in`, { signal: AbortSignal.timeout(10_000) }).then(
    (answer) => answer.text(),
    () => '',
  )
  return page.includes('Underwrap')
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
