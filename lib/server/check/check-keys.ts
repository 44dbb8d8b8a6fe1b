import { stat } from 'node:fs/promises'
import { parseVkey } from '@/lib/evidence/vkey'
import { keyFile, loadLogKey } from '@/lib/server/log/key-folder'
import { LogBroken } from '@/lib/server/log/log-broken'
import type { Tally } from './tally'

/** Check that the secret of a tenant's present log key lies in the data folder, is that key's, and is its owner's alone. */
export async function checkLogKey(dataDir: string, tenant: string, vkeyText: string, tally: Tally): Promise<void> {
  const vkey = parseVkey(vkeyText)
  const place = `log key of ${tenant}`
  const remedy = 'Put the file back from a backup, or take a new key: npm run underwrap -- rotate-log-key.'
  if (!vkey.ok) return tally.fail({ place, problem: 'the log names a key that is none', remedy })
  const path = keyFile(dataDir, vkey.value)
  const key = await loadLogKey(dataDir, vkey.value).catch((error: unknown) => {
    if (error instanceof LogBroken) return error.code
    throw error
  })
  if (key === null) return tally.fail({ place, problem: `${path} is missing`, remedy })
  if (typeof key === 'string') return tally.fail({ place, problem: `${path} holds another key`, remedy })
  if (((await stat(path)).mode & 0o077) !== 0)
    return tally.fail({ place, problem: `${path} can be read by others`, remedy: `Run chmod 600 ${path}.` })
  tally.pass()
}
