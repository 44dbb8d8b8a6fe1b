import type { RecordFormHand } from './record-form'

/** Who mixed and from what, in the form of a mix of one batch of each part. */
export async function fillMix(
  form: RecordFormHand,
  mix: string,
  parts: Readonly<Record<'A' | 'B', readonly [batch: string, amount: string]>>,
): Promise<void> {
  await form.key('Mix', mix)
  await form.pick('Mixed by', 'Dorrit Akande')
  await form.choose('Proportioned', 'by mass')
  await form.within('Part A 1').pick('Batch', parts.A[0])
  await form.within('Part A 1').key('Amount', parts.A[1])
  await form.add('Add a batch of part B')
  await form.within('Part B 1').pick('Batch', parts.B[0])
  await form.within('Part B 1').key('Amount', parts.B[1])
}
