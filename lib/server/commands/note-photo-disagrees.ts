import { factCommand } from './fact-command'

/** Note that a photo shows something else than the reading it backs. Refusals: those of every fact command. */
export const notePhotoDisagrees = factCommand({
  kind: 'photo-disagrees',
  on: 'repair',
  act: 'enter remark',
  observation: true,
})
