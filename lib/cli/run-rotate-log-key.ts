import { parseArgs } from 'node:util'
import { PersonId } from '@/lib/domain/facts/fact'
import { MACHINE } from '@/lib/server/log/machine'
import { rotateLogKey } from '@/lib/server/log/rotate-log-key'
import { PlainError } from './plain-error'
import { say } from './say'
import { tenantFor, withStore } from './with-store'

/** `rotate-log-key --reason TEXT`: take a new key for the log. The answer is the new verifier key. */
export async function runRotateLogKey(parameters: string[]): Promise<void> {
  const { values } = parseArgs({
    args: parameters,
    options: { reason: { type: 'string' }, by: { type: 'string' }, tenant: { type: 'string' } },
    strict: true,
  })
  const reason = values.reason?.trim() ?? ''
  if (reason.length < 3 || reason.length > 600)
    throw new PlainError('Say why: underwrap rotate-log-key --reason TEXT (3 to 600 characters)')
  const by = values.by === undefined ? MACHINE : PersonId.safeParse(values.by).data
  if (!by) throw new PlainError(`${values.by} is no id of a person.`)
  await withStore(async (store) => {
    const tenant = await tenantFor(store, values.tenant)
    const { key, isEndorsed } = await rotateLogKey(store, tenant.id, by, reason)
    await say(
      `${key.vkey.text}\n${isEndorsed ? 'The former key vouches for it.' : 'No former key vouches for it: tell those who check your record.'}`,
    )
  })
}
