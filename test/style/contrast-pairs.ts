/** What a pair is used for says how far its colours must stand apart. */
export const AT_LEAST = { reading: 7, text: 4.5, shape: 3 } as const
export type Use = keyof typeof AT_LEAST
export type Pair = readonly [use: Use, what: string, foreground: string, background: string]

const GROUNDS = ['--paper', '--sheet', '--band'] as const
const VERDICTS = [
  ['pass', '--pass', '--pass-wash'],
  ['fail', '--fail', '--fail-wash'],
  ['not proven', '--unproven', '--unproven-wash'],
  ['in question', '--question', '--question-wash'],
  ['lapsed', '--lapsed', '--lapsed-wash'],
] as const

/** Every pair of colours that the screens set against each other, by their names in the stylesheets. */
export const PAIRS: readonly Pair[] = [
  ...GROUNDS.flatMap((ground): Pair[] => [
    ['reading', 'reading or limit', '--ink', ground],
    ['reading', 'name of a limit, of a tally', '--ink-2', ground],
    ['text', 'link', '--act', ground],
    ['text', 'link under the pointer', '--act-hover', ground],
    ['shape', 'ring of the focus', '--act', ground],
    ['shape', 'edge of a control', '--steel-dark', ground],
    ['text', 'button that stops', '--fail', ground],
  ]),
  ...VERDICTS.flatMap(([word, colour, wash]): Pair[] => [
    ...GROUNDS.map((ground): Pair => ['text', `verdict: ${word}`, colour, ground]),
    ['text', `words on the note: ${word}`, colour, wash],
    ['reading', `reading on the note: ${word}`, '--ink', wash],
    ['text', 'quiet text on the note', '--ink-2', wash],
    ['text', 'link on the note', '--act', wash],
    ['shape', `edge of the note: ${word}`, colour, wash],
  ]),
  ['reading', 'reading outside its limit', '--fail', '--sheet'],
  ['reading', 'reading outside its limit, in its cell', '--fail', '--fail-wash'],
  ['reading', 'key pressed, chosen mark', '--ink', '--act-wash'],
  ['text', 'button under the pointer', '--act', '--act-wash'],
  ['text', 'quiet text on what is chosen', '--ink-2', '--act-wash'],
  ['text', 'button', '--act-ink', '--act'],
  ['text', 'button under the pointer', '--act-ink', '--act-hover'],
  ['text', 'bar', '--bar-ink', '--bar'],
  ['text', 'bar, quiet', '--bar-2', '--bar'],
  ['shape', 'ring of the focus on the bar', '--bar-ink', '--bar'],
  ['text', 'step of now', '--paper', '--ink'],
  ['shape', 'tick or cross in a mark of pass', '--sheet', '--pass'],
  ['shape', 'tick or cross in a mark of fail', '--sheet', '--fail'],
  ['reading', 'timer that ran out', '#fff', '#8a1510'],
  ['text', 'button on the timer that ran out', '#14181b', '#fff'],
  ['reading', 'lettering of a picture', '#14181b', '#f1efe7'],
  ['text', 'note in a picture', '#414b52', '#f1efe7'],
  ['reading', 'lettering of a picture, dimmed for the night', '#101316', '#c1bfb9'],
  ['text', 'note in a picture, dimmed for the night', '#343c42', '#c1bfb9'],
  ['text', 'print on a label or a paper tally', '#000', '#fff'],
  ['text', 'quiet print on a paper tally', '#333', '#fff'],
]

/** Colours that only part or fill, and say nothing by themselves. */
export const SILENT: ReadonlySet<string> = new Set([
  '--rule',
  '--rule-2',
  '--steel',
  '--plug',
  '--filler',
  '--ply',
  '--ply-edge',
  '--steel-fill',
  '--map-low',
  '--map-high',
])
