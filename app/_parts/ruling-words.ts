import type { BodyOf } from '@/lib/domain/facts/fact-kinds'

/** A ruling on a conflict in words, to be chosen and once given. */
export const RULING_WORDS = {
  'decision stands': 'The decision stands',
  'decision falls': 'The decision falls',
  seen: 'Seen: nothing to decide',
} as const satisfies Record<BodyOf<'conflict-settled'>['ruling'], string>
