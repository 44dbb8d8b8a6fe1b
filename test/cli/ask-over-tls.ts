import type { IncomingHttpHeaders } from 'node:http'
import { request } from 'node:https'
import type { TLSSocket } from 'node:tls'

export type Asking = {
  port: number
  ca: string
  path?: string
  method?: string
  headers?: Record<string, string>
  body?: Buffer
  host?: string
}
export type Answered = { status: number; headers: IncomingHttpHeaders; body: Buffer; until: string }

/** Ask a server under a certificate of our own authority, on a connection of its own. @throws when TLS fails */
export function askOverTls({
  port,
  ca,
  path = '/',
  method = 'GET',
  headers = {},
  body,
  host = 'localhost',
}: Asking): Promise<Answered> {
  return new Promise((settle, fail) => {
    const asked = request(
      {
        host: '127.0.0.1',
        servername: host,
        port,
        ca,
        path,
        method,
        agent: false,
        headers: { host: `${host}:${port}`, ...headers },
      },
      (answer) => {
        const until = (answer.socket as TLSSocket).getPeerCertificate().valid_to
        const whole = (chunks: Buffer[]) =>
          settle({ status: answer.statusCode ?? 0, headers: answer.headers, body: Buffer.concat(chunks), until })
        answer.toArray().then(whole, fail)
      },
    )
    asked.on('error', fail)
    asked.end(body)
  })
}
