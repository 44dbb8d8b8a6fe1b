import { writeFileSync } from 'node:fs'
import { CLOCK_FILE } from '../places'

/** Set the one clock of server and page, as a time of the site's day. */
export function setClock(day: string, clock: string): void {
  writeFileSync(CLOCK_FILE, `2026-${day}T${clock.length === 5 ? `${clock}:00` : clock}+01:00`)
}
