import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Moment } from '@/lib/domain/time'
import { type OpenStore, openStore } from '@/lib/server/store/open-store'
import { makeTenant } from '@/lib/server/store/tenants'

export type TestStore = OpenStore & { tenant: string; setNow(moment: Moment): void; remove(): Promise<void> }

/** A folder that the embedded server's user can enter. */
export function makeDataFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'underwrap-test-'))
  chmodSync(folder, 0o755)
  return folder
}

/** A store of its own for one test file, with one tenant `tenant-a` and a clock that the test moves; `url` puts it on another server. */
export async function openTestStore(options: { url?: string; now?: Moment } = {}): Promise<TestStore> {
  const dataDir = makeDataFolder()
  let now: Moment = options.now ?? '2026-05-12T07:00:00+01:00'
  const store = await openStore({ dataDir, ...(options.url ? { url: options.url } : {}), now: () => now })
  await makeTenant(store, { id: 'tenant-a', slug: 'a', name: 'Plumbline-and-Thrice Inspection' })
  return {
    ...store,
    tenant: 'tenant-a',
    setNow(moment) {
      now = moment
    },
    async remove() {
      await store.close()
      rmSync(dataDir, { recursive: true, force: true })
    },
  }
}
