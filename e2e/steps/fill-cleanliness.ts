import type { RecordFormHand } from './record-form'
import { SALTS } from './repair-0042'

/** Fill the form of surface cleanliness beside its times: blasted, of the same length on both sides of the leak. */
export async function fillCleanliness(
  form: RecordFormHand,
  { dust = '2', salts = SALTS, prepared = '190' }: { dust?: string; salts?: readonly string[]; prepared?: string } = {},
): Promise<void> {
  await form.choose('Prepared by', 'blast')
  await form.choose('Grade by the pictures', 'Sa 2 1/2')
  await form.key('Dust class', dust)
  await form.thumb('Soluble salts', salts)
  await form.pick('Salt meter', 'SM-02')
  await form.choose('Free of oil, water does not break', 'yes')
  await form.key('Prepared, upstream of the leak', prepared)
  await form.key('Prepared, downstream of the leak', prepared)
}
