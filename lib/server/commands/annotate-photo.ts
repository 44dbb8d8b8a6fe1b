import { factCommand } from './fact-command'

/** Lay an annotation over a photo; the original stays untouched. Refusals: those of every fact command. */
export const annotatePhoto = factCommand({
  kind: 'photo-annotated',
  on: 'repair',
  act: 'attach photo',
  observation: true,
})
