import { spawn } from 'node:child_process'
import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describedPhotos } from '@/lib/server/demo/photo-drawing'
import { scriptRepair0044 } from '@/lib/server/demo/repair-0044'
import { openStore } from '@/lib/server/store/open-store'
import { scriptBegunRepair } from './prepare-begun-repair'
import { prepareStore } from './prepare-store'

/**
 * The prepared store in a folder that stays, served on a test clock: a test may stop it and start it again. Its folder and clock are in KEPT_DATA and KEPT_CLOCK. With the argument `begun` it holds a repair whose
 * point 05 is open; with `accepted` beside it, one that was accepted. With `closing` that one waits for its acceptance.
 */
const { KEPT_DATA: dataDir = '', KEPT_CLOCK: clockFile = '' } = process.env
const isClosing = process.argv.includes('closing')
const isBegun = isClosing || process.argv.includes('begun')
/** What was written later is not in the store. */
const PREPARED_AT = isClosing
  ? '2026-05-14T16:38:00+01:00'
  : isBegun
    ? '2026-05-27T09:10:00+01:00'
    : '2026-05-18T07:30:00+01:00'
const isPrepared = join(dataDir, 'prepared-for-tests')
if (!existsSync(isPrepared)) {
  const store = await openStore({
    dataDir,
    now: () => PREPARED_AT,
  })
  try {
    await prepareStore(store, (script) => {
      if (isBegun) scriptBegunRepair(script)
      if (isClosing || process.argv.includes('accepted')) scriptRepair0044(script, describedPhotos)
    })
  } finally {
    await store.close()
  }
  writeFileSync(isPrepared, '')
}
const child = spawn(process.execPath, ['--import', 'tsx', 'lib/cli/serve.ts', 'test', '--test-clock', clockFile], {
  stdio: 'inherit',
  env: { ...process.env, UNDERWRAP_DATA: dataDir, DATABASE_URL: '' },
})
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal))
child.on('close', (code) => process.exit(code ?? 1))
