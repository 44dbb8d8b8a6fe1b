import { PersonId } from '@/lib/domain/facts/fact'
import { checkpointNow } from '@/lib/server/log/checkpoint-now'
import { appendFacts } from '@/lib/server/store/append-facts'
import { makeTenant } from '@/lib/server/store/tenants'
import { remark } from '@/test/store/facts-for-tests'
import { openTestStore, type TestStore } from '@/test/store/test-store'

const WRITERS = 8
const APPENDS = 60
const ROUNDS = 5
const BOUND = 2.5
const QI = PersonId.parse('QI')

/**
 * Measure appends of eight writers into one log, whose leaves are numbered in one queue, with a checkpoint signed over and over meanwhile, against eight writers into eight logs
 * that share nothing but the disk. The ratio is of the fastest of five rounds, each of all in turn.
 */
export async function benchLogAppend(): Promise<{ name: string; ratio: number; bound: number; lines: string[] }> {
  const store = await openTestStore()
  try {
    const tenants = Array.from({ length: WRITERS }, (_, at) => `writer-${at}`)
    for (const id of tenants) await makeTenant(store, { id, slug: id, name: id })
    const floors: number[] = []
    const queued: number[] = []
    const signed: number[] = []
    let heads = 0
    for (let round = 0; round < ROUNDS; round += 1) {
      floors.push(await appendMs(store, tenants))
      queued.push(await appendMs(store, [store.tenant]))
      let isOver = false
      const signing = (async () => {
        for (; !isOver; heads += 1) await checkpointNow(store, store.tenant, QI)
      })()
      signed.push(await appendMs(store, [store.tenant]))
      isOver = true
      await signing
    }
    const [floor, queue, sign] = [Math.min(...floors), Math.min(...queued), Math.min(...signed)]
    const rate = (ms: number) => `${((WRITERS * APPENDS * 1000) / ms).toFixed(0)} durable appends/s`
    return {
      name: 'appends into one log, with checkpoints',
      ratio: sign / floor,
      bound: BOUND,
      lines: [
        `floor ${rate(floor)} (eight writers, eight logs)`,
        `one log ${rate(queue)}; ratio ${(queue / floor).toFixed(2)}`,
        `one log, ${heads} checkpoints meanwhile in all rounds, ${rate(sign)}; ratio ${(sign / floor).toFixed(2)}`,
      ],
    }
  } finally {
    await store.remove()
  }
}

/** Each writer appends to a stream of its own, one fact after the other. */
async function appendMs(store: TestStore, tenants: readonly string[]): Promise<number> {
  const started = performance.now()
  await Promise.all(
    Array.from({ length: WRITERS }, async (_, writer) => {
      const tenant = tenants[writer % tenants.length] ?? ''
      for (let at = 0; at < APPENDS; at += 1) {
        const appended = await appendFacts(store, tenant, [remark('measured', `project:P-${writer}`)], {
          receivedBy: QI,
        })
        if (!appended.ok) throw new Error(appended.error.code)
      }
    }),
  )
  return performance.now() - started
}
