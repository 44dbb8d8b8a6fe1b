import { execFileSync } from 'node:child_process'
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { issueDossier } from '@/lib/server/dossier/issue-dossier'
import { loadSigner } from '@/lib/server/dossier/load-signer'
import { loadOwnCertificate } from '@/lib/server/dossier/own-certificate'
import { SIGNATURE_STREAM } from '@/lib/server/log/key-facts'
import { loadRepairState } from '@/lib/server/store/load-repair-state'
import { loadStream } from '@/lib/server/store/load-stream'
import { loadTenant } from '@/lib/server/store/tenants'
import { hasProgram } from './outside-tools'
import { ACTOR, REPAIR, type SealedWorld, sealedWorld } from './sealed-world'
import { startTimeStampService } from './time-stamp-service'

let world: SealedWorld
beforeAll(async () => {
  world = await sealedWorld()
})
afterAll(() => world.remove())
afterEach(() => vi.unstubAllEnvs())

const issue = (changes: string[] = []) =>
  issueDossier(world.store, world.store.tenant, { repair: REPAIR, purpose: 'final', changes, actor: ACTOR })
const taken = async (): Promise<FactOf<'signing-certificate-taken'>['body'][]> => {
  const { facts } = await loadStream(world.store, world.store.tenant, SIGNATURE_STREAM)
  return ofKind(facts, 'signing-certificate-taken').map((fact) => fact.body)
}
const issues = async () => (await loadRepairState(world.store, world.store.tenant, REPAIR))?.issues.length

test('without a certificate of its own the store makes one, once, and keeps it for its owner alone', async () => {
  const { dataDir, tenant } = world.store
  const holder = await loadTenant(world.store, tenant)
  if (!holder) throw new Error('no tenant')
  const made = await Promise.all([1, 2, 3].map(() => loadOwnCertificate(dataDir, holder, new Date())))
  expect(new Set(made.map((one) => one.certificate.sha256)).size).toBe(1)
  expect(made[0]?.certificate).toMatchObject({ isMadeHere: true, subject: `CN=Dossiers of ${holder.name}` })
  const files = readdirSync(join(dataDir, 'keys')).filter((name) => name.startsWith('signing-'))
  expect(files).toEqual([`signing-${tenant}.pem`])
  expect(statSync(join(dataDir, 'keys', files[0] ?? '')).mode & 0o777).toBe(0o600)
  expect(statSync(join(dataDir, 'keys')).mode & 0o777).toBe(0o700)
  expect(readFileSync(join(dataDir, 'keys', files[0] ?? ''), 'utf8')).toMatch(/PRIVATE KEY[\s\S]*CERTIFICATE/)
})

test('a time-stamp service that fails leaves nothing issued and nothing stored', async () => {
  vi.stubEnv('UNDERWRAP_TSA', 'http://127.0.0.1:9/')
  const stored = vi.fn(world.store.photos.put)
  const store = { ...world.store, photos: { ...world.store.photos, put: stored } }
  const order = { repair: REPAIR, purpose: 'final', changes: [], actor: ACTOR }
  await expect(issueDossier(store, store.tenant, order)).rejects.toMatchObject({ code: 'time-stamp-refused' })
  expect(stored).not.toHaveBeenCalled()
  expect(await issues()).toBe(0)
})

test('what is set but cannot be used is named, and nothing is signed with another certificate instead', async () => {
  const holder = await loadTenant(world.store, world.store.tenant)
  if (!holder) throw new Error('no tenant')
  vi.stubEnv('UNDERWRAP_P12', '/nowhere/organisation.p12')
  await expect(loadSigner(world.store, holder)).rejects.toThrow('cannot be read (ENOENT)')
  vi.stubEnv('UNDERWRAP_P12', '')
  vi.stubEnv('UNDERWRAP_TSA', 'clock house')
  await expect(loadSigner(world.store, holder)).rejects.toThrow('names no address')
})

describe.skipIf(!hasProgram('openssl'))('with an organisation’s certificate [needs openssl]', () => {
  test('the log names each certificate before a dossier is signed with it, and the cover says whose it is', async () => {
    const openssl = (...parameters: string[]): Buffer =>
      execFileSync('openssl', parameters, { cwd: join(world.at('.')), stdio: 'pipe' })
    openssl(
      'req',
      '-x509',
      '-newkey',
      'rsa:2048',
      '-nodes',
      '-keyout',
      'o.key',
      '-out',
      'o.pem',
      '-subj',
      '/CN=Plumbline',
    )
    openssl('pkcs12', '-export', '-inkey', 'o.key', '-in', 'o.pem', '-out', 'o.p12', '-passout', 'pass:and thrice')
    const first = await issue()
    vi.stubEnv('UNDERWRAP_P12', world.at('o.p12'))
    vi.stubEnv('UNDERWRAP_P12_PASSWORD', 'and thrice')
    const service = await startTimeStampService(world.at('tsa'))
    vi.stubEnv('UNDERWRAP_TSA', service.url)
    const second = await issue(['signed by the organisation'])
    await service.stop()
    expect([first.ok, second.ok]).toEqual([true, true])
    expect((await taken()).map((one) => [one.madeHere, one.subject])).toEqual([
      [true, 'CN=Dossiers of Plumbline-and-Thrice Inspection'],
      [false, 'CN=Plumbline'],
    ])
    expect(await issues()).toBe(2)
  })
})
