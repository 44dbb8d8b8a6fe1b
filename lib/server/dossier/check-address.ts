import { baseUrl } from '@/lib/server/runtime/base-url'

/** Where a holder of a dossier can have it checked: the page `/check` of this server, as people reach it. */
export function checkAddress(): string {
  return `${baseUrl().replace(/\/+$/, '')}/check`
}
