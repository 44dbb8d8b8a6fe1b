import { PersonId, StreamId } from '@/lib/domain/facts/fact'
import { issueDossier } from '@/lib/server/dossier/issue-dossier'
import { checkpointNow } from '@/lib/server/log/checkpoint-now'
import { appendFacts } from '@/lib/server/store/append-facts'
import { openStore } from '@/lib/server/store/open-store'
import { remark } from '@/test/store/facts-for-tests'

/** A process that appends, signs heads and issues dossiers until it is killed, and tells on standard output only what was acknowledged to it. */
const QI = PersonId.parse('QI')
const TENANT = 'tenant-a'
const store = await openStore({ dataDir: process.argv[2] ?? '' })
const tell = (line: string) => process.stdout.write(`${line}\n`)
tell('open')

async function appendOn(stream: string): Promise<never> {
  for (let at = 0; ; at += 1) {
    const facts = Array.from({ length: 1 + (at % 3) }, () => remark('before the kill', stream))
    const appended = await appendFacts(store, TENANT, facts, { receivedBy: QI })
    if (!appended.ok) throw new Error(appended.error.code)
    for (const { id } of appended.value) tell(`fact ${id}`)
  }
}

async function signOn(): Promise<never> {
  for (;;) {
    const { size, root } = await checkpointNow(store, TENANT, QI)
    tell(`head ${size} ${root}`)
  }
}

async function issueOn(): Promise<never> {
  const order = { repair: StreamId.parse('repair:MD-1'), purpose: 'final', changes: ['killed before'], actor: QI }
  for (;;) {
    const issued = await issueDossier(store, TENANT, order)
    if (!issued.ok) throw new Error(issued.error.code)
    tell(`issue ${issued.value.revision} ${issued.value.sha256}`)
  }
}

await Promise.all([appendOn('project:P-8'), appendOn('project:P-9'), appendOn('project:P-9'), signOn(), issueOn()])
