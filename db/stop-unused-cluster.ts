import { leave } from './cluster'
import { takeLease } from './cluster-lease'

/** Started by a process that ends without closing its database: stops the server of a data folder when nobody uses it. */
const folder = process.argv[2]
if (folder) {
  await new Promise((settle) => setTimeout(settle, 300))
  const lease = await takeLease(folder)
  if (lease) await leave(folder, lease)
}
