import type { RecordFormHand } from './record-form'

type Permit = {
  permit: string
  from: readonly [day: string, clock: string]
  to: readonly [day: string, clock: string]
  pressure: string
}

/** Fill the form of a permit of shaft 2, the line live. */
export async function fillPermit(form: RecordFormHand, { permit, from, to, pressure }: Permit): Promise<void> {
  await form.key('Permit', permit)
  await form.time('Valid from', ...from)
  await form.time('Valid to', ...to)
  await form.key('Area authority, by name', 'Shaft 2 control')
  await form.key('Pressure at start', pressure)
  await form.choose('State of the line', 'live')
  await form.choose('Spark-restricted area', 'no')
}
