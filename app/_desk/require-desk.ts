import { notFound, redirect } from 'next/navigation'
import type { StreamId, StreamKind } from '@/lib/domain/facts/fact'
import { type Act, authorise } from '@/lib/server/commands/authorise'
import { openReadingDesk, type ReadingDesk } from '@/lib/server/views/reading-desk'
import { streamOfParam } from './stream-name'

/** The desk of who is signed in; anyone else is sent to sign in. */
export async function requireDesk(): Promise<ReadingDesk> {
  return (await openReadingDesk()) ?? redirect('/sign-in')
}

/** Whether the reader reads what serves every project: stores, instruments, persons, specifications. An administrator alone does not. */
export function mayReadStores(reading: ReadingDesk): boolean {
  return reading.roles.some((role) => role !== 'administrator')
}

/** Whether an act is offered to the reader. The command decides again by itself. */
export function mayAct(reading: ReadingDesk, act: Act, project: StreamId | 'any' = 'any'): boolean {
  return authorise(reading.actor, project, reading.desk.today(null), act) === null
}

/** The stream that an address names, or the page that says it is not there. */
export function streamAt(kind: StreamKind, param: string): StreamId {
  return streamOfParam(kind, param) ?? notFound()
}

/** The UTC offset of the desk's clock, `+01:00`. */
export function offsetOf(reading: ReadingDesk): string {
  const now = reading.desk.now(null)
  return now.endsWith('Z') ? '+00:00' : now.slice(-6)
}

/** A page's path to a stream of a kind. */
export function pathOf(folder: string, stream: StreamId): string {
  return `/${folder}/${encodeURIComponent(stream.slice(stream.indexOf(':') + 1))}`
}
