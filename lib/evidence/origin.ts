import * as z from 'zod'

/** A tenant's id as it may stand in an origin: no space, no plus sign, no slash. */
export const TenantName = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,99}$/, "a holder's id of letters, digits, dots, dashes")

/** Whose log: the store it lies in, its holder, and whether the store holds invented demonstration records. */
export type Origin = { storeId: string; tenant: string; isDemo: boolean }

const PATTERN = /^underwrap(-demo)?\/([0-9a-f]{16})\/([A-Za-z0-9][A-Za-z0-9._-]{0,99})$/

/** The origin line of a log (FORMAT.md section 3). @throws RangeError when the store's or the holder's id cannot stand in one */
export function writeOrigin({ storeId, tenant, isDemo }: Origin): string {
  const text = `underwrap${isDemo ? '-demo' : ''}/${storeId}/${tenant}`
  if (!PATTERN.test(text))
    throw new RangeError(`Expected a store id of 16 hex digits and a holder's id, received ${text}`)
  return text
}

/** The parts of an origin line; null when it is none. */
export function parseOrigin(text: string): Origin | null {
  const [, demo, storeId, tenant] = PATTERN.exec(text) ?? []
  return storeId && tenant ? { storeId, tenant, isDemo: demo !== undefined } : null
}
