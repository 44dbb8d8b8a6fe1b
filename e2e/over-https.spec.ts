import { type ChildProcess, spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, expect, type Page, test } from '@playwright/test'
import { askOverTls } from '@/test/cli/ask-over-tls'
import { makeAuthority } from '@/test/cli/authority-for-tests'
import { E2E_PORT } from './places'
import { deviceOptions } from './steps/device-options'
import { expectUsable } from './steps/expect-usable'
import { openRepair } from './steps/open-repair'
import { signInAs } from './steps/people'
import { uploadDemandedPhotos } from './steps/photos'
import { takeToSite } from './steps/take-to-site'
import { QI } from './steps/walk'

const port = E2E_PORT + 11
const plainPort = E2E_PORT + 12
const NUMBER = 'MD-0301'
/** This machine as a phone on the same network sees it; loopback where there is no network, which is another origin than the base address all the same. */
const OWN =
  Object.values(networkInterfaces())
    .flatMap((some) => some ?? [])
    .find((one) => !one.internal && one.family === 'IPv4')?.address ?? '127.0.0.1'
const folder = mkdtempSync(join(tmpdir(), 'underwrap-e2e-tls-'))
chmodSync(folder, 0o755)
const at = (name: string) => join(folder, name)
let child: ChildProcess | null = null
let ca = ''

test.beforeAll(async () => {
  const authority = await makeAuthority()
  const issued = await authority.issue({ dns: ['localhost'], addresses: [OWN] })
  ca = authority.cert
  writeFileSync(at('cert.pem'), issued.cert + authority.cert)
  writeFileSync(at('key.pem'), issued.key)
  writeFileSync(at('clock'), '2026-05-18T07:30:00+01:00')
  child = spawn(process.execPath, ['--import', 'tsx', 'e2e/serve-kept.ts'], {
    stdio: 'inherit',
    env: {
      ...process.env,
      PORT: String(port),
      UNDERWRAP_HTTP_PORT: String(plainPort),
      UNDERWRAP_TLS_CERT: at('cert.pem'),
      UNDERWRAP_TLS_KEY: at('key.pem'),
      KEPT_DATA: folder,
      KEPT_CLOCK: at('clock'),
    },
  })
  await expect
    .poll(
      () =>
        askOverTls({ port, ca, path: '/sign-in' }).then(
          (one) => one.status,
          () => 0,
        ),
      { timeout: 240_000 },
    )
    .toBe(200)
})

test.afterAll(async () => {
  const gone = new Promise((settle) => child?.once('exit', settle))
  child?.kill('SIGTERM')
  await gone
  rmSync(folder, { recursive: true, force: true })
})

async function openPage(origin: string): Promise<{ page: Page; close(): Promise<void> }> {
  const { launchOptions } = test.info().project.use
  // a phone trusts the authority whose certificate was installed on it; this browser is told to trust whatever serves here
  const browser = await chromium.launch({
    ...launchOptions,
    args: [...(launchOptions?.args ?? []), '--ignore-certificate-errors'],
  })
  const context = await browser.newContext({
    ...deviceOptions(origin),
    ignoreHTTPSErrors: true,
  })
  return { page: await context.newPage(), close: () => browser.close() }
}

test('a phone works under this machine’s address by HTTPS: sign-in, uploads, the screens without a network', async () => {
  const { page, close } = await openPage(`https://${OWN}:${port}`)
  await page.goto(`http://${OWN}:${plainPort}/repairs`)
  await page.waitForURL(`https://${OWN}:${port}/sign-in`)
  await signInAs(page, QI)
  const cookies = await page.context().cookies()
  const session = cookies.find((one) => one.name.includes('session_token'))
  expect(session).toMatchObject({
    secure: true,
    httpOnly: true,
    sameSite: 'Lax',
    name: expect.stringMatching(/^__Secure-/),
  })
  await openRepair(page, NUMBER)
  await takeToSite(page, NUMBER)
  await expect(page.getByText('Capture without a network is off')).toHaveCount(0)
  await page.goto(`/repairs/${NUMBER}/points/05`)
  await uploadDemandedPhotos(page)
  await expect(page.locator('.thumbs figure')).toHaveCount(2)
  const source = (await page.locator('.thumbs img').first().getAttribute('src')) ?? ''
  const picture = await page.request.get(source)
  expect([picture.status(), picture.headers()['content-type']]).toEqual([200, expect.stringMatching(/^image\//)])
  await close()
})

test('a sign-in from a page of another origin is refused, and a plain cookie is never given', async () => {
  const headers = { 'content-type': 'application/json' }
  const body = Buffer.from('{"email":"nobody@site.example","password":"some words or other"}')
  const asked = { port, ca, path: '/api/auth/sign-in/email', method: 'POST', body }
  const foreign = await askOverTls({ ...asked, headers: { ...headers, origin: 'https://elsewhere.example' } })
  expect(foreign.status).toBe(403)
  const own = await askOverTls({ ...asked, headers: { ...headers, origin: `https://localhost:${port}` } })
  expect(own.status).toBe(401)
  const forged = await askOverTls({
    port,
    ca,
    path: '/waiting',
    headers: { 'x-forwarded-host': 'elsewhere.example', 'x-forwarded-proto': 'http' },
  })
  expect([forged.status, forged.headers.location]).toEqual([307, '/sign-in'])
})

test('at a plain address of this machine the app says in plain sight that capture without a network is off, and why', async () => {
  test.skip(OWN === '127.0.0.1', 'a network beside loopback')
  const { page, close } = await openPage(`http://${OWN}:${E2E_PORT}`)
  const note = page.getByText('Capture without a network is off at this address.')
  for (const path of ['/site', '/site#show=outbox']) {
    await page.goto(path)
    await expect(note).toBeVisible()
    await expect(page.getByText(`This one is http://${OWN}:${E2E_PORT}.`)).toBeVisible()
  }
  await signInAs(page, QI)
  await openRepair(page, 'MD-0302')
  await expect(note).toBeVisible()
  await expect(page.getByRole('button', { name: 'Take to site' })).toHaveCount(0)
  await expectUsable(page)
  await close()
})
