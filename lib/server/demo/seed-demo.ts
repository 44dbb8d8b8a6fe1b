import { PersonId, StreamId, streamOf } from '@/lib/domain/facts/fact'
import { instantOf, type Moment } from '@/lib/domain/time'
import { createAccount } from '@/lib/server/auth/create-account'
import { issueDossier } from '@/lib/server/dossier/issue-dossier'
import { appendFacts } from '@/lib/server/store/append-facts'
import type { Store, TenantId } from '@/lib/server/store/store'
import { listTenants, makeTenant } from '@/lib/server/store/tenants'
import { demoFacts } from './demo-facts'
import { DEMO_PASSWORD, DEMO_PEOPLE, QI } from './demo-people'
import { at, secondsAfter } from './demo-time'
import { drawnPhotoBook } from './drawn-photo-book'
import { type ScriptedFact, startScript } from './fact-script'

/** The demo's tenant: the inspection body. */
export const DEMO_TENANT = {
  id: 'plumbline-and-thrice',
  slug: 'plumbline-and-thrice',
  name: 'Plumbline-and-Thrice Inspection',
  isDemo: true,
} as const

/** Dossiers as issued: they are really built, from what the store had received by then. */
const ISSUES: { repair: string; issuedAt: Moment }[] = [
  { repair: 'MD-0041', issuedAt: at('05-15', '14:00') },
  { repair: 'MD-0044', issuedAt: at('05-16', '10:00') },
  { repair: 'MD-0042', issuedAt: at('05-25', '15:00') },
]

/**
 * Enter the demo through the append path that people use, receipts at the scripted times, with drawn photos, issued dossiers and one account a person.
 * Only into an empty store; the tenant is marked as a demo.
 * @throws Error when the store is not empty, or when anything of the script is refused: the demo is wrong then
 */
export async function seedDemo(store: Store): Promise<{ tenant: TenantId }> {
  if ((await listTenants(store)).length > 0) throw new Error('The demo is entered only into an empty store.')
  const photos = await drawnPhotoBook(store.photos)
  await makeTenant(store, DEMO_TENANT)
  let waiting = demoFacts(photos).facts
  for (const issue of ISSUES) {
    const due = waiting.filter((one) => instantOf(one.receivedAt) <= instantOf(issue.issuedAt))
    waiting = waiting.filter((one) => instantOf(one.receivedAt) > instantOf(issue.issuedAt))
    await appendAll(store, due)
    await issueAndSend(store, issue.repair, issue.issuedAt)
  }
  await appendAll(store, waiting)
  for (const { name, email, id } of DEMO_PEOPLE) {
    const made = await createAccount(store.db.queries, {
      name,
      email,
      password: DEMO_PASSWORD,
      tenant: DEMO_TENANT.id,
      personId: id,
    })
    if (!made.ok) throw new Error(`The account of ${name} was refused: ${made.error.code}`)
  }
  return { tenant: DEMO_TENANT.id }
}

/** Append in order of receipt; facts received together by one person go in one batch. */
async function appendAll(store: Store, scripted: readonly ScriptedFact[]): Promise<void> {
  let batch: ScriptedFact[] = []
  const flush = async (): Promise<void> => {
    const [first] = batch
    if (!first) return
    const { receivedAt, receivedBy } = first
    const appended = await appendFacts(
      store,
      DEMO_TENANT.id,
      batch.map((one) => one.fact),
      { receivedAt, receivedBy },
    )
    if (!appended.ok) throw new Error(`The demo was refused at ${receivedAt}: ${JSON.stringify(appended.error)}`)
    batch = []
  }
  for (const one of scripted) {
    const [first] = batch
    if (first && (first.receivedAt !== one.receivedAt || first.receivedBy !== one.receivedBy)) await flush()
    batch.push(one)
  }
  await flush()
}

async function issueAndSend(store: Store, number: string, issuedAt: Moment): Promise<void> {
  const issued = await issueDossier(store, DEMO_TENANT.id, {
    repair: StreamId.parse(`repair:${number}`),
    purpose: 'final',
    changes: [],
    actor: PersonId.parse(QI),
    receivedAt: issuedAt,
  })
  if (!issued.ok) throw new Error(`The dossier of ${number} was not issued: ${issued.error.code}`)
  const script = startScript(new Map([[`dossier:${number}`, 1]]))
  script.write({
    stream: streamOf('dossier', number),
    kind: 'transmitted',
    at: secondsAfter(issuedAt, 600),
    by: QI,
    body: {
      issue: issued.value.fact,
      to: 'Ludmila Stannard, Quellmark Deep Mine Cooperative',
      how: 'e-mail',
      at: secondsAfter(issuedAt, 600),
    },
  })
  await appendAll(store, script.written)
}
