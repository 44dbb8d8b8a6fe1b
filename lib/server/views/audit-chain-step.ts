import type { FactId } from '@/lib/domain/facts/fact'

/** One line of a step: what is there, where it is told in full, and whether it is not as it should be. `photo` is the digest of an original. */
export type ChainLine = { text: string; note?: string; href: string | null; photo?: string; isWrong?: boolean }
/** One step behind a reading: `there`, `missing`, or `not asked` for by plan or record. */
export type ChainStep = { title: string; state: 'there' | 'missing' | 'not asked'; lines: ChainLine[] }

/** A step with what is there. */
export function step(title: string, lines: ChainLine[]): ChainStep {
  return { title, state: 'there', lines }
}

/** A step that the chain lacks, with what is known of it. */
export function missing(title: string, text: string, href: string | null = null): ChainStep {
  return { title, state: 'missing', lines: [{ text, href }] }
}

/** A step that nothing asks for. */
export function notAsked(title: string, text: string): ChainStep {
  return { title, state: 'not asked', lines: [{ text, href: null }] }
}

/** The page of a fact. */
export function factHref(id: FactId): string {
  return `/audit/facts/${id}`
}
