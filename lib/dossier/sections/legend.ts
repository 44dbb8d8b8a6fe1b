import { STANDING_CAUTION } from '@/lib/domain/caution'
import { type Block, type Cell, cell, head, pairs, paragraph } from '../blocks'
import type { DossierContext } from '../dossier-context'

const MEANINGS: readonly (readonly [string, string])[] = [
  ['performed', 'the signer did the work; he cannot release the same point unless the plan says so'],
  ['measured', 'the signer took the readings'],
  ['checked', 'the signer looked at the work or record of another'],
  ['witnessed', 'the signer was there when it was done'],
  ['reviewed', 'the signer read the record'],
  ['released', 'the signer gave leave to pass a hold, to the plan'],
  ['accepted', 'the signer took the finished repair'],
  ['approved', 'the signer approved a plan, a limit or a disposition'],
]
const STATES: readonly (readonly [Cell, string])[] = [
  [
    { spans: [], sign: { glyph: 'pass', text: 'Pass' } },
    'every criterion of the specification is met by the readings as taken',
  ],
  [
    { spans: [], sign: { glyph: 'fail', text: 'Fail' } },
    'at least one criterion is not met; a concession accepts it and never changes it',
  ],
  [
    { spans: [], sign: { glyph: 'not-proven', text: 'Not proven' } },
    'too few readings, something missing, or a doubt in time or measure: neither pass nor fail',
  ],
  [
    { spans: [], sign: { glyph: 'in-question', text: 'In question' } },
    'the basis of a result was doubted later; undecided, not failed',
  ],
  [
    { spans: [], sign: { glyph: 'lapsed', text: 'Lapsed' } },
    'a release that ran out or was withdrawn; it stays in the history',
  ],
  [{ spans: [], sign: { glyph: 'open', text: 'Open' } }, 'not done yet'],
]

/** How to read the dossier without the program that made it: meanings of signatures, states, values, times, units. */
export function legendBlocks({ state, project }: DossierContext): Block[] {
  return [
    { kind: 'heading', text: 'Meanings of signatures' },
    pairs(MEANINGS.map(([name, text]) => [name, text] as const)),
    { kind: 'heading', text: 'Signs' },
    {
      kind: 'table',
      isHeadless: true,
      columns: [{ title: '' }, { title: '' }],
      rows: STATES.map(([sign, text]) => [{ ...sign, isHead: true }, cell(text)]),
    },
    { kind: 'heading', text: 'Values, times, units' },
    {
      kind: 'table',
      isHeadless: true,
      columns: [{ title: '' }, { title: '' }],
      rows: [
        [
          head('Readings'),
          cell(
            'digits and unit as read; nothing is rounded into acceptance; means are exact, shown rounded half away from zero',
          ),
        ],
        [
          head('TW, NA, n/a, –'),
          cell(
            'through-wall; no access; not applicable with its reason; not inspected. None of them is a number, and none counts as a pass',
          ),
        ],
        [head('< and >'), cell('below or above what the instrument can show; never averaged')],
        [head('◆'), cell('a reading outside its limit')],
        [head('Struck text'), cell('the value first keyed, corrected later; beside it the correction')],
        [
          head('Times'),
          cell(
            `as observed, with their offset from UTC; the site keeps UTC${project?.opened.body.utcOffset ?? state.asOf.slice(-6)}. Windows run on observed times, the trail on received times`,
          ),
        ],
        [
          head('Stations'),
          cell(
            `millimetres from the named datum or from the leak, clock positions seen ${state.opened.body.clockView}`,
          ),
        ],
        [
          head('Units'),
          cell(
            'mm millimetre, µm micrometre, MPa megapascal (gauge), °C, K kelvin of difference, mg/m², g, min, h, Shore D. No hardness scale is converted into another',
          ),
        ],
        [head('[U+…]'), cell('a character that the typeface of this file lacks, by its Unicode number')],
        [
          head('SHA-256'),
          cell('digest of the exact bytes of a fact or a photo; two files with the same digest are the same file'),
        ],
        [
          head('Rules'),
          cell(`verdicts and states were computed from the facts by ${state.rules}, as of ${state.asOf}`),
        ],
      ],
    },
    paragraph(STANDING_CAUTION),
  ]
}
