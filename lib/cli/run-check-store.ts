import { parseArgs } from 'node:util'
import { checkStore } from '@/lib/server/check/check-store'
import { say } from './say'
import { withStore } from './with-store'

/** `check-store`: check everything that the store keeps; a line a break, then `N checked, M broken`. Exit code 1 when something is broken. */
export async function runCheckStore(parameters: string[]): Promise<void> {
  parseArgs({ args: parameters, options: {}, strict: true })
  await withStore(async (store) => {
    const { checkedCount, brokenCount } = await checkStore(store, (line) => process.stdout.write(`${line}\n`))
    await say(`${checkedCount} checked, ${brokenCount} broken`)
    if (brokenCount > 0) process.exitCode = 1
  })
}
