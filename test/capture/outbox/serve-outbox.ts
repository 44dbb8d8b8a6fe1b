// the framework's request scopes need this before any of its modules is loaded
import 'next/dist/server/node-environment-baseline'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { Readable } from 'node:stream'
import { workAsyncStorage } from 'next/dist/server/app-render/work-async-storage.external'
import { workUnitAsyncStorage } from 'next/dist/server/app-render/work-unit-async-storage.external'
import { GET, PATCH } from '@/app/api/outbox/photos/[sha256]/route'
import { POST } from '@/app/api/outbox/route'
import { loadRuntime } from '@/lib/server/runtime/runtime'
import { PASSWORD } from '@/test/commands/world'

/** The outbox's own route handlers over HTTP, each request in a request scope of the framework, so that they read its cookie themselves. */
export async function serveOutbox(): Promise<{ url: string; close(): Promise<void> }> {
  const server = createServer((incoming, outgoing) => {
    answer(incoming).then(
      (response) => write(response, outgoing),
      (error: unknown) => {
        // a caller that is gone in the middle of its body needs no answer
        if (incoming.errored || !incoming.complete) outgoing.destroy()
        else outgoing.writeHead(500).end(JSON.stringify({ problem: String(error) }))
      },
    )
  })
  return listen(server)
}

/** Listen on a free port of this machine. */
export async function listen(server: Server): Promise<{ url: string; close(): Promise<void> }> {
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready))
  const { port } = server.address() as AddressInfo
  return {
    url: `http://127.0.0.1:${port}`,
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections()
        server.close(() => closed())
      }),
  }
}

/** Sign a person of the world in, and give a fetch that carries the session. */
export async function fetchAs(person: string): Promise<typeof fetch> {
  const { auth } = await loadRuntime()
  const signedIn = await auth.api.signInEmail({
    body: { email: `${person}@example.test`, password: PASSWORD },
    asResponse: true,
  })
  const cookie = signedIn.headers
    .getSetCookie()
    .map((one) => one.split(';')[0])
    .join('; ')
  if (cookie === '') throw new Error(`${person} is not signed in: ${signedIn.status}`)
  return (input, init) => fetch(input, { ...init, headers: { ...init?.headers, cookie } })
}

async function answer(incoming: IncomingMessage): Promise<Response> {
  const { method = 'GET', url = '/' } = incoming
  const headers = new Headers()
  for (const [name, value] of Object.entries(incoming.headers)) if (typeof value === 'string') headers.set(name, value)
  const hasBody = method === 'POST' || method === 'PATCH'
  const body = hasBody ? { body: Readable.toWeb(incoming) as ReadableStream, duplex: 'half' } : {}
  const request = new Request(`http://${headers.get('host')}${url}`, { method, headers, ...body } as RequestInit)
  const photo = /^\/api\/outbox\/photos\/([^/]+)$/.exec(url)?.[1]
  const work = () => {
    if (photo === undefined) return POST(request)
    const params = { params: Promise.resolve({ sha256: photo }) }
    return method === 'PATCH' ? PATCH(request, params) : GET(request, params)
  }
  const scope = { route: url, forceStatic: false, dynamicShouldError: false } as never
  return workAsyncStorage.run(scope, () =>
    workUnitAsyncStorage.run({ type: 'request', phase: 'action', headers } as never, work),
  )
}

async function write(response: Response, outgoing: ServerResponse): Promise<void> {
  outgoing.writeHead(response.status, Object.fromEntries(response.headers))
  outgoing.end(Buffer.from(await response.arrayBuffer()))
}
