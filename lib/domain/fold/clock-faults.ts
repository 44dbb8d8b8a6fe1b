import { instantOf, showMoment } from '../time'
import type { Remarkable } from './remarkable'
import type { RepairGround } from './repair-ground'

/** Devices whose clock was known to be wrong when they took facts of this repair: one line for each device and error. */
export function clockFaults(ground: RepairGround): Remarkable[] {
  const groups = new Map<string, { device: string; errorMs: number; facts: RepairGround['own'] }>()
  for (const fact of ground.own) {
    const errorMs = ground.clockErrors[fact.id]
    if (errorMs === undefined) continue
    const key = `${fact.device.id} ${errorMs}`
    const group = groups.get(key) ?? { device: fact.device.id, errorMs, facts: [] }
    group.facts.push(fact)
    groups.set(key, group)
  }
  return [...groups.values()].flatMap(({ device, errorMs, facts }): Remarkable[] => {
    const [first] = facts
    const last = facts.at(-1)
    if (!first || !last) return []
    const span =
      instantOf(first.observedAt) === instantOf(last.observedAt) ? '' : ` until ${showMoment(last.observedAt)}`
    return [
      {
        at: first.observedAt,
        fact: first.id,
        about: 'clock',
        text: `Clock of ${device} was ${showOffset(errorMs)} at ${facts.length} ${facts.length === 1 ? 'entry' : 'entries'}${span}.`,
      },
    ]
  })
}

function showOffset(ms: number): string {
  const seconds = Math.round(Math.abs(ms) / 1000)
  return `${seconds >= 60 ? `${Math.floor(seconds / 60)} min ` : ''}${seconds % 60} s ${ms > 0 ? 'fast' : 'slow'}`
}
