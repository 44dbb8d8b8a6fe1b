import type { FactId } from '@/lib/domain/facts/fact'

/** Ids that the rows of the authorisation table name. */
export type Names = Record<
  | 'record'
  | 'other'
  | 'photo'
  | 'otherPhoto'
  | 'release'
  | 'notice'
  | 'query'
  | 'acceptance'
  | 'issue'
  | 'grant'
  | 'proposal'
  | 'action',
  FactId
>
