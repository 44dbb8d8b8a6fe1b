import { parseReading, type Reading, type Unit } from '@/lib/domain/reading'
import { canBeNegative, keyText } from './key-text'

/** Keying from mark to mark: where one is, what is typed there, and every step that can be taken back. */
export type Keying = {
  current: string | null
  typed: string
  /** The text that could not be left, as it is no reading. */
  unreadable: string | null
  /** The mark whose value was taken last, to be read back. */
  last: string | null
  past: readonly Step[]
}
/** A step before which all was so; with the reading that it changed, as it was. */
type Step = Pick<Keying, 'current' | 'typed' | 'last'> & { was: Put | null }
/** A reading put at a mark; null takes it away. */
export type Put = { mark: string; reading: Reading | null }
export type MarkKey =
  | { kind: 'key'; key: string }
  | { kind: 'go'; mark: string | null }
  | { kind: 'take'; reading: Reading | null }
export type Ground = { order: readonly string[]; unit: Unit; readingAt(mark: string): Reading | null }
export type Keyed = { keying: Keying; put: Put | null; isRefused: boolean }

export const NOT_KEYING: Keying = { current: null, typed: '', unreadable: null, last: null, past: [] }
const PAST_MOST = 400
/** Letters of through-wall and no access, as a keyboard types them. */
const LETTERS = /^(t|tw|n|na)$/i

/**
 * One key, jump or special value, from mark to mark. What is being typed is put at its mark as soon as it is a reading, so that nothing is lost when the screen locks. `next` and `previous` leave a mark
 * only when what is typed is a reading; `undo` takes back the last step, whether a character, a value or a jump. Keys: those of `keyText`, letters of TW and NA, `next`, `previous`, `undo`, `clear`.
 */
export function keyMark(keying: Keying, pressed: MarkKey, ground: Ground): Keyed {
  if (pressed.kind === 'go') return jump(keying, pressed.mark)
  if (pressed.kind === 'take') return take(keying, pressed.reading, ground)
  switch (pressed.key) {
    case 'next':
      return leave(keying, 1, ground)
    case 'previous':
      return leave(keying, -1, ground)
    case 'undo':
      return undo(keying)
    case 'clear':
      return clear(keying, ground)
    default:
      return type(keying, pressed.key, ground)
  }
}

function refusal(keying: Keying, unreadable: string | null = keying.unreadable): Keyed {
  return { keying: { ...keying, unreadable }, put: null, isRefused: true }
}

function after(keying: Keying, next: Partial<Keying>, was: Put | null): Keying {
  const { current, typed, last, past } = keying
  return { ...keying, unreadable: null, ...next, past: [...past, { current, typed, last, was }].slice(-PAST_MOST) }
}

function jump(keying: Keying, mark: string | null): Keyed {
  const next =
    mark === keying.current && keying.typed === '' ? keying : after(keying, { current: mark, typed: '' }, null)
  return { keying: { ...next, unreadable: null }, put: null, isRefused: false }
}

function leave(keying: Keying, step: 1 | -1, { order, unit, readingAt }: Ground): Keyed {
  const { current, typed } = keying
  if (current === null) return order[0] ? jump(keying, order[0]) : refusal(keying)
  if (typed !== '' && !readingOf(typed, unit)) return refusal(keying, typed)
  const to = order.indexOf(current) + step
  if (to < 0) return refusal(keying)
  const last = step > 0 && readingAt(current) ? current : keying.last
  return { keying: after(keying, { current: order[to] ?? null, typed: '', last }, null), put: null, isRefused: false }
}

function undo(keying: Keying): Keyed {
  const step = keying.past.at(-1)
  if (!step) return refusal(keying)
  const { was, ...before } = step
  return { keying: { ...before, unreadable: null, past: keying.past.slice(0, -1) }, put: was, isRefused: false }
}

function clear(keying: Keying, { readingAt }: Ground): Keyed {
  const { current } = keying
  if (current === null) return refusal(keying)
  const was = { mark: current, reading: readingAt(current) }
  if (!was.reading && keying.typed === '') return refusal(keying)
  return { keying: after(keying, { typed: '' }, was), put: { mark: current, reading: null }, isRefused: false }
}

function take(keying: Keying, reading: Reading | null, ground: Ground): Keyed {
  const { current } = keying
  if (current === null) return refusal(keying)
  const was = { mark: current, reading: ground.readingAt(current) }
  const to = reading ? (ground.order[ground.order.indexOf(current) + 1] ?? null) : current
  const last = reading ? current : keying.last
  return {
    keying: after(keying, { current: to, typed: '', last }, was),
    put: { mark: current, reading },
    isRefused: false,
  }
}

function type(keying: Keying, key: string, { unit, readingAt }: Ground): Keyed {
  const { current, typed } = keying
  if (current === null) return refusal(keying)
  const lettered = typed + key
  const text = LETTERS.test(lettered)
    ? lettered.toUpperCase()
    : keyText(typed, key, { point: true, sign: canBeNegative(unit), limits: true })
  if (text === null) return refusal(keying)
  const was = { mark: current, reading: readingAt(current) }
  return {
    keying: after(keying, { typed: text }, was),
    put: { mark: current, reading: readingOf(text, unit) },
    isRefused: false,
  }
}

/** A dash alone is a sign that waits for its digits where values lie below zero, and not inspected elsewhere. */
function readingOf(text: string, unit: Unit): Reading | null {
  return text === '-' && canBeNegative(unit) ? null : parseReading(text, unit)
}
