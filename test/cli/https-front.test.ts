import { createHash, randomBytes } from 'node:crypto'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, get, type IncomingMessage, type Server } from 'node:http'
import { request } from 'node:https'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { followTls } from '@/lib/cli/follow-tls'
import { type Front, startHttpsFront } from '@/lib/cli/https-front'
import { readTls, type Tls } from '@/lib/cli/tls-files'
import { askOverTls } from './ask-over-tls'
import { makeAuthority } from './authority-for-tests'

const folder = mkdtempSync(join(tmpdir(), 'underwrap-tls-'))
const files = { certFile: join(folder, 'cert.pem'), keyFile: join(folder, 'key.pem') }
const END = new Date('2031-03-01T00:00:00Z')
const LATER_END = new Date('2032-03-01T00:00:00Z')

describe('the TLS front', () => {
  let [inner, front, ca, port, plainPort] = [null as Server | null, null as Front | null, '', 0, 0]
  let issue: Awaited<ReturnType<typeof makeAuthority>>['issue']
  let tls: Tls
  let seen: { asked: IncomingMessage; sha256: string; sizeBytes: number } | null = null
  let goneAfterChunks: Promise<void>

  beforeAll(async () => {
    const authority = await makeAuthority()
    ;({ cert: ca, issue } = authority)
    await renew(END)
    tls = readTls(files, Date.now())
    let tellGone: () => void
    goneAfterChunks = new Promise((settle) => {
      tellGone = settle
    })
    inner = createServer(async (asked, answer) => {
      if (asked.url === '/drip') {
        answer.write('first\n')
        answer.on('close', tellGone)
        return
      }
      if (asked.url === '/torn') {
        answer.writeHead(200, { 'content-length': '1000' })
        answer.write('half', () => answer.destroy())
        return
      }
      const hash = createHash('sha256')
      let sizeBytes = 0
      for await (const chunk of asked) {
        hash.update(chunk)
        sizeBytes += chunk.length
      }
      seen = { asked, sha256: hash.digest('hex'), sizeBytes }
      answer.writeHead(201, { 'set-cookie': ['one=1', 'two=2'], 'x-said': 'by the app' })
      answer.end('taken')
    })
    await new Promise<void>((settle) => inner?.listen(0, '127.0.0.1', settle))
    ;[port, plainPort] = [await freePort(), await freePort()]
    front = await startHttpsFront({ tls, port, innerPort: (inner.address() as AddressInfo).port, plainPort })
  })

  afterAll(() => {
    front?.close()
    inner?.closeAllConnections()
    inner?.close()
    rmSync(folder, { recursive: true, force: true })
  })

  async function renew(to: Date): Promise<void> {
    const issued = await issue({ dns: ['localhost', 'site.test.example'], addresses: ['127.0.0.1'], to })
    writeFileSync(files.keyFile, issued.key)
    writeFileSync(files.certFile, issued.cert + ca)
  }

  test('says who asks by itself, and passes on nothing of it from outside', async () => {
    const answer = await askOverTls({
      port,
      ca,
      path: '/where?x=1',
      headers: {
        'x-forwarded-for': '203.0.113.9',
        'x-forwarded-proto': 'http',
        'x-forwarded-host': 'evil.example',
        'x-forwarded-port': '1',
        'x-real-ip': '203.0.113.9',
        forwarded: 'for=203.0.113.9',
        connection: 'close, x-dropped',
        'x-dropped': 'of this connection',
        origin: `https://localhost:${port}`,
        cookie: 'a=b',
      },
    })
    expect([answer.status, answer.body.toString(), answer.headers['x-said']]).toEqual([201, 'taken', 'by the app'])
    expect(answer.headers['set-cookie']).toEqual(['one=1', 'two=2'])
    expect(seen?.asked.url).toBe('/where?x=1')
    expect(seen?.asked.headers).toMatchObject({
      host: `localhost:${port}`,
      origin: `https://localhost:${port}`,
      cookie: 'a=b',
      'x-forwarded-for': expect.stringMatching(/^(::ffff:)?127\.0\.0\.1$/),
      'x-forwarded-proto': 'https',
      'x-forwarded-host': `localhost:${port}`,
    })
    for (const gone of ['x-real-ip', 'forwarded', 'x-forwarded-port', 'x-dropped'])
      expect(seen?.asked.headers).not.toHaveProperty(gone)
  })

  test('an upload of 40 MB arrives as it is, with and without its length', async () => {
    const body = randomBytes(40_000_000)
    const sha256 = createHash('sha256').update(body).digest('hex')
    for (const headers of [{ 'content-length': String(body.length) }, { 'transfer-encoding': 'chunked' }]) {
      expect((await askOverTls({ port, ca, method: 'POST', body, headers })).status).toBe(201)
      expect([seen?.sizeBytes, seen?.sha256]).toEqual([body.length, sha256])
    }
  })

  test('an answer runs through as it comes, and the app hears that nobody listens any more', async () => {
    const first = await new Promise<string>((settle, fail) => {
      const asked = request(
        { host: '127.0.0.1', servername: 'localhost', port, ca, path: '/drip', agent: false },
        (answer) => {
          answer.once('data', (chunk) => {
            settle(String(chunk))
            asked.destroy()
          })
          answer.on('error', () => undefined)
        },
      )
      asked.on('error', fail)
      asked.end()
    })
    expect(first).toBe('first\n')
    await goneAfterChunks
  })

  test('half an answer is never a whole one, and an app that is gone is said', async () => {
    await expect(askOverTls({ port, ca, path: '/torn' })).rejects.toThrow()
    const [lonelyPort, nobody] = [await freePort(), await freePort()]
    const lonely = await startHttpsFront({ tls, port: lonelyPort, innerPort: nobody, plainPort: null })
    expect((await askOverTls({ port: lonelyPort, ca })).status).toBe(502)
    lonely.close()
  })

  test('the port without TLS sends to the one with, by a name of the certificate only', async () => {
    expect(await plainAnswer(`site.test.example:${plainPort}`)).toEqual([
      308,
      `https://site.test.example:${port}/a?b=1`,
    ])
    expect(await plainAnswer('127.0.0.1')).toEqual([308, `https://127.0.0.1:${port}/a?b=1`])
    expect(await plainAnswer('evil.example')).toEqual([404, undefined])
  })

  function plainAnswer(host: string): Promise<[number | undefined, string | undefined]> {
    return new Promise((settle, fail) => {
      get({ host: '127.0.0.1', port: plainPort, path: '/a?b=1', headers: { host } }, (answer) => {
        answer.resume()
        settle([answer.statusCode, answer.headers.location])
      }).on('error', fail)
    })
  }

  test('a taken port is a plain error', async () => {
    await expect(startHttpsFront({ tls, port, innerPort: 1, plainPort: null })).rejects.toThrow(
      /Port \d+ is taken .*PORT/,
    )
  })

  test('a renewed certificate is taken up while serving; one whose key does not fit yet is told and waited for', async () => {
    const lines: string[] = []
    const stop = followTls({
      files,
      present: tls,
      take: (renewed) => front?.renew(renewed),
      say: (line) => lines.push(line),
      eachMs: 20,
    })
    expect(new Date((await askOverTls({ port, ca })).until)).toEqual(END)
    const next = await issue({ dns: ['localhost'], to: LATER_END })
    writeFileSync(files.certFile, next.cert)
    await expect.poll(() => lines).toEqual([expect.stringMatching(/in use stays, to 2031-03-01.*does not fit/)])
    expect(new Date((await askOverTls({ port, ca })).until)).toEqual(END)
    writeFileSync(files.keyFile, next.key)
    await expect.poll(() => lines.length).toBe(2)
    stop()
    expect(lines[1]).toBe('A renewed certificate is in use, to 2032-03-01T00:00:00.000Z.')
    expect(new Date((await askOverTls({ port, ca })).until)).toEqual(LATER_END)
  })
})

function freePort(): Promise<number> {
  return new Promise((settle) => {
    const probe = createServer().listen(0, () => {
      const { port } = probe.address() as AddressInfo
      probe.close(() => settle(port))
    })
  })
}
