/** The facts of a refused decision as texts alone, in their order; what is not stated is left out. */
export function barrierTexts(fact: unknown): string[] {
  if (Array.isArray(fact)) return fact.flatMap(barrierTexts)
  if (typeof fact === 'object' && fact !== null) return [Object.values(fact).flatMap(barrierTexts).join(' ')]
  return fact === null || fact === undefined ? [] : [String(fact)]
}
