import type { PageOutbox } from './page-outbox'

const USED = 'numbers-used'
type Kept = Pick<PageOutbox, 'store'>

/** Numbers that were used on this device by whomever: they stay used when a person signs out with the entry not yet sent. */
export async function numbersUsed({ store }: Kept): Promise<string[]> {
  const note = await store.note(USED)
  return Array.isArray(note) ? note.filter((one) => typeof one === 'string') : []
}

/** Keep the numbers that are used now, all of them. */
export function keepUsed({ store }: Kept, numbers: readonly string[]): Promise<void> {
  return store.keepNote(USED, [...numbers])
}
