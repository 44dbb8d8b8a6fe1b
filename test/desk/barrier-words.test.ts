import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { barrierWords, notDecidedWords } from '@/app/_ui/barrier-words'
import { wordsOf } from '@/app/_ui/refusal-note'
import { refusalOf } from '@/lib/server/commands/refusal-of'

/** Told in words of their own elsewhere, before a command gives `not-decided`. */
const NOT_TOLD_HERE = new Set([
  'attempt-taken',
  'attempt-unknown',
  'blocks-form-a-cycle',
  'doer-does-not-verify',
  'draft-missing',
  'not-own-entry',
  'point-unknown',
  'proposal-stale',
  'release-unknown',
  'second-inspector-needed',
  'second-person-needed',
  'target-unknown',
])

function textsUnder(folder: string, names: RegExp): string {
  return readdirSync(folder)
    .filter((name) => names.test(name))
    .map((name) => readFileSync(join(folder, name), 'utf8'))
    .join('\n')
}

describe('why something is not decided', () => {
  test('every code of the domain and of the commands has words of its own', () => {
    const domain = [...textsUnder('lib/domain/fold', /^(may-|decision).*\.ts$/).matchAll(/code: '([a-z-]+)'/g)]
    const commands = [...textsUnder('lib/server/commands', /\.ts$/).matchAll(/why: '([a-z-]+)'/g)]
    const codes = new Set([...domain, ...commands].map(([, code = '']) => code))
    expect(codes.size).toBeGreaterThan(30)
    const raw = [...codes].filter(
      (code) => !NOT_TOLD_HERE.has(code) && notDecidedWords(code, ['a', 'b'])[0] === `${code.replaceAll('-', ' ')}.`,
    )
    expect(raw).toEqual([])
  })

  test('the desk says what the device says of the same refusal', () => {
    const barriers = [
      { code: 'nonconformance-blocks', numbers: ['NCR-0007', 'NCR-0009'] },
      { code: 'verdict-not-pass', verdict: 'fail', criteria: ['11.1-each'] },
      { code: 'incomplete', missing: ['Not submitted.'] },
      { code: 'in-question' },
      { code: 'blocked', by: ['05', '06'] },
    ]
    for (const barrier of barriers)
      expect(wordsOf(refusalOf('take a nonconformance on', barrier)).lines).toEqual(barrierWords(barrier))
    expect(barrierWords({ code: 'blocked', by: ['05', '06'] })).toEqual([
      'Points 05, 06 are not released and valid: those first.',
    ])
  })

  test('a sentence of the server is said as it came', () => {
    expect(notDecidedWords('Leaf 12 of the log is not its fact.', [])).toEqual(['Leaf 12 of the log is not its fact.'])
  })
})
