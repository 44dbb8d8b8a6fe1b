import { createServer as createPlain, type IncomingMessage, request, type Server, type ServerResponse } from 'node:http'
import { createServer } from 'node:https'
import { isIP } from 'node:net'
import { PlainError } from './plain-error'
import type { Tls } from './tls-files'

/** Headers of one connection, and what only this front may say about who asks: never passed on from outside. */
const NOT_ONWARD =
  /^(connection|keep-alive|proxy-.*|te|trailer|transfer-encoding|upgrade|expect|forwarded|via|x-forwarded-.*|x-real-ip|x-client-ip|true-client-ip)$/
const NOT_BACK = /^(connection|keep-alive|proxy-.*|trailer|transfer-encoding|upgrade)$/

export type FrontSettings = {
  tls: Tls
  port: number
  /** Where the app listens, on loopback alone. */
  innerPort: number
  /** A port without TLS that sends browsers to the one with. */
  plainPort: number | null
}

export type Front = { renew(tls: Tls): void; close(): void }

/**
 * The TLS end of the server, before an app on loopback. Bodies run through in both directions as they come; who asks, by what name and that it was https is said by
 * us alone. @throws PlainError when a port is taken or may not be used
 */
export async function startHttpsFront({ tls, port, innerPort, plainPort }: FrontSettings): Promise<Front> {
  let inUse = tls
  const secure = createServer({ cert: tls.cert, key: tls.key }, (asked, answer) => passOn(asked, answer, innerPort))
  const plain = plainPort === null ? null : createPlain((asked, answer) => sendToHttps(asked, answer, inUse, port))
  const close = () => {
    for (const one of [secure, plain]) {
      one?.close()
      one?.closeAllConnections()
    }
  }
  try {
    await listen(secure, port, 'PORT')
    if (plain && plainPort !== null) await listen(plain, plainPort, 'UNDERWRAP_HTTP_PORT')
  } catch (cause) {
    close()
    throw cause
  }
  return {
    renew(renewed) {
      secure.setSecureContext({ cert: renewed.cert, key: renewed.key })
      inUse = renewed
    },
    close,
  }
}

function passOn(asked: IncomingMessage, answer: ServerResponse, innerPort: number): void {
  const { host } = asked.headers
  if (!host || !asked.url?.startsWith('/')) {
    end(answer, 400, 'This is no request for a page.')
    return
  }
  const named = (asked.headers.connection ?? '').toLowerCase().split(/\s*,\s*/)
  const headers = {
    ...kept(asked.headers, (name) => !NOT_ONWARD.test(name) && !named.includes(name)),
    'x-forwarded-for': asked.socket.remoteAddress ?? '',
    'x-forwarded-host': host,
    'x-forwarded-proto': 'https',
  }
  // a connection each: one kept open could be closed by the app in the moment of use, and loopback costs next to nothing
  const onward = request({
    host: '127.0.0.1',
    port: innerPort,
    method: asked.method,
    path: asked.url,
    headers,
    agent: false,
  })
  onward.on('response', (back) => {
    answer.writeHead(
      back.statusCode ?? 502,
      back.statusMessage,
      kept(back.headers, (name) => !NOT_BACK.test(name)),
    )
    answer.flushHeaders()
    back.pipe(answer)
    // cut off behind: cut off before too, so that half an answer is never taken for a whole one
    back.on('close', () => back.complete || answer.destroy())
  })
  onward.on('error', () => {
    if (!answer.headersSent) end(answer, 502, 'The server is starting, or has trouble. Try again.')
  })
  asked.pipe(onward)
  answer.on('close', () => onward.destroy())
}

function sendToHttps({ headers, url }: IncomingMessage, answer: ServerResponse, tls: Tls, port: number): void {
  const host = (headers.host ?? '').replace(/:\d+$/, '').replace(/^\[|\]$/g, '')
  const isNamed = host !== '' && (isIP(host) ? tls.x509.checkIP(host) : tls.x509.checkHost(host)) !== undefined
  const path = url?.startsWith('/') ? url : '/'
  if (!isNamed) {
    end(answer, 404, 'Use the name in the certificate of this server, with https.')
    return
  }
  const shown = isIP(host) === 6 ? `[${host}]` : host
  answer.writeHead(308, { location: `https://${shown}${port === 443 ? '' : `:${port}`}${path}`, connection: 'close' })
  answer.end()
}

function kept<T>(headers: Record<string, T>, keeps: (name: string) => boolean): Record<string, T> {
  return Object.fromEntries(Object.entries(headers).filter(([name, value]) => value !== undefined && keeps(name)))
}

function end(answer: ServerResponse, status: number, sentence: string): void {
  answer.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', connection: 'close' })
  answer.end(`${sentence}\n`)
}

function listen(server: Server, port: number, setting: string): Promise<void> {
  return new Promise((settle, fail) => {
    server.once('error', (cause: NodeJS.ErrnoException) => {
      const why = cause.code === 'EACCES' ? 'may not be used by this user' : 'is taken'
      fail(new PlainError(`Port ${port} ${why} (${cause.code}): choose another with ${setting}.`))
    })
    server.listen(port, () => settle())
  })
}
