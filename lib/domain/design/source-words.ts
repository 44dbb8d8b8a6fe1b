import type { PersonId } from '../facts/fact'
import type { RecordType } from '../records/record'
import { showMoment } from '../time'
import type { FigureSource } from './recorded-basis'

const NAMES: Partial<Record<RecordType, string>> = { defect: 'defect as found', design: 'design sheet' }

/** Where a figure comes from, in words: the record with its point, who and when; the clause; or typed on the page and not kept. */
export function sourceWords(from: FigureSource | null, nameOf: (person: PersonId) => string): string {
  if (from === null) return 'not recorded'
  switch (from.kind) {
    case 'record':
      return `${NAMES[from.type] ?? from.type}, point ${from.point}, ${nameOf(from.by)}, ${showMoment(from.at)}`
    case 'specification':
      return `specification ${from.clause}, rev ${from.revision}`
    case 'asked':
      return 'typed on this page, not recorded'
  }
}

/** Inputs by where they come from, each source in words once, in the order of first use; those without a source last. */
export function inputsBySource<T extends { from: FigureSource | null }>(
  inputs: readonly T[],
  nameOf: (person: PersonId) => string,
): { words: string; from: FigureSource | null; inputs: T[] }[] {
  const groups = new Map<string, { words: string; from: FigureSource | null; inputs: T[] }>()
  for (const one of inputs) {
    const words = one.from?.kind === 'specification' ? 'specification' : sourceWords(one.from, nameOf)
    const group = groups.get(words) ?? { words, from: one.from, inputs: [] }
    group.inputs.push(one)
    groups.set(words, group)
  }
  return [...groups.values()].sort((a, b) => Number(a.from === null) - Number(b.from === null))
}
