import type { Database } from '@/db/client'
import type { Moment } from '@/lib/domain/time'
import type { PhotoStore } from '@/lib/photo/photo-store'

/** Id of a tenant: its better-auth organisation's. */
export type TenantId = string

/** What every use case works on: the database, the photos and the one clock of this process. */
export type Store = {
  db: Database
  /** Folder of this store on this machine; the signing keys lie in it. */
  dataDir: string
  photos: PhotoStore
  /** The present moment, or the demo's or a test's. Sign-ins and certificates do not use it. */
  now(): Moment
}
