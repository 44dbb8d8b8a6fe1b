/** Readings of the walk, as they are keyed: the demonstration's second repair, entered as a new one. */
export const STATIONS = '-120 -60 0 60 120'
export const CLOCKS = '12 3 6 9'
export const WALL = words('7.9 8.0 7.8 7.9 8.0 7.4 7.1 6.9 7.2 7.5 6.3 5.4 TW 5.2 6.1 7.3 7.2 7.0 7.1 7.4')
export const SALTS = words('17 12 19')
export const PROFILE = words('76 81 74 83 79 85 72 80')
export const FILLER_BEFORE = words('0.1 0.2 0.2 0.3 0.1 0.1 0.2 0.2 0.1')
export const FILLER_AFTER = words('3.5 4.0 3.7 4.3 7.4 4.0 3.5 3.9 3.7')
export const FILLER_HARDNESS = words('69 68 70')
export const HARDNESS_FIRST = words('75 76 74 75 76 73 74 72 73 74 64 66 63 65 67 72 73 71 74 73')
export const HARDNESS_SECOND = words('79 80 79 78 80 79 79 78 79 79 77 78 76 77 78 78 79 78 79 78')
/** Filler mix: amounts of parts A and B. */
export const FILLER_MIX = ['640', '244'] as const
/** Resin mix: number, start of mixing, used up, amounts of parts A and B. */
export const MIXES = [
  ['M1', '11:18', '11:37', '760', '289'],
  ['M2', '11:35', '11:56', '760', '288'],
] as const
/** Ply: mix, start, end, overlap and offset of the end joint. */
export const PLIES = [
  ['M1', '11:20', '11:24', '25', '76'],
  ['M1', '11:24', '11:27', '25', '83'],
  ['M1', '11:27', '11:30', '26', '79'],
  ['M1', '11:30', '11:33', '25', '88'],
  ['M1', '11:33', '11:37', '27', '74'],
  ['M2', '11:38', '11:42', '25', '85'],
  ['M2', '11:42', '11:47', '26', '81'],
  ['M2', '11:47', '11:52', '25', '77'],
  ['M2', '11:52', '11:57', '25', '92'],
] as const

function words(text: string): string[] {
  return text.split(' ')
}
