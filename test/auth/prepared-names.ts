import type { FactId } from '@/lib/domain/facts/fact'

/** Ids that the rows of the authorisation table name. */
export type Names = Record<
  | 'record'
  | 'copied'
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
  | 'action'
  | 'key'
  | 'conflict',
  FactId
>

/** Id of one fact of tenant A, for pages that are asked for it before the world is there. */
export const KNOWN_FACT_ID = '019e3333-0000-7000-8000-00000000000a'
