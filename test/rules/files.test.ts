import { describe, expect, test } from 'vitest'
import { listFiles, readSources } from './source-files'

const sources = readSources().filter((file) => !file.path.startsWith('db/migrations/'))

/** Data tables, the one allowed exception to the length of a file: rows and next to no code. What each is a table of. */
const DATA_TABLES = new Map<string, string>([
  ['lib/capture/forms/before-forms.ts', 'fields of the forms of points 01 to 13'],
  ['lib/capture/forms/work-forms.ts', 'fields of the forms of the work itself'],
  ['lib/capture/forms/wrap-forms.ts', 'fields of the forms of the wrap'],
  ['lib/domain/templates/plan-points.ts', 'points of the plan with records, photos and parties'],
  ['lib/server/demo/completions.ts', 'figures that complete the given ones, repair by repair'],
  ['lib/server/demo/demo-store-tables.ts', 'instruments and batches of the demonstration'],
  ['lib/server/demo/repair-figures.ts', 'given figures, repair by repair'],
  ['lib/server/demo/specification-common.ts', 'criteria with clause, rule and limit'],
  ['test/calc/boundaries.test.ts', 'a value on, under and over each boundary'],
  ['test/calc/refusal-codes.test.ts', 'a case for each refusal'],
  ['test/domain/rules-map.test.ts', 'each rule with the test that holds it'],
])
const BANNED_NAMES = /(^|[-/])(utils?|helpers?|misc|manager|data|item|process)([-.]|$)/

describe('files', () => {
  test('no file is over 200 lines, data tables aside', () => {
    expect(
      sources
        .filter((file) => file.lines > 200 && !DATA_TABLES.has(file.path))
        .map((file) => `${file.path}: ${file.lines}`),
    ).toEqual([])
  })

  test('every listed data table is there and needs its exception', () => {
    expect(
      [...DATA_TABLES.keys()].filter((path) => (sources.find((file) => file.path === path)?.lines ?? 0) <= 200),
    ).toEqual([])
  })

  test('names are kebab-case and none is a grab-bag', () => {
    const own = sources.map((file) => file.path)
    expect(own.filter((path) => BANNED_NAMES.test(path))).toEqual([])
    expect(own.filter((path) => !/^[a-z0-9.()[\]/_-]+$/.test(path))).toEqual([])
  })

  test('no test is skipped for good, run alone, or put off', () => {
    const wrong = sources.flatMap((file) =>
      [/\.only\(/, /\bTODO\b/, /\bFIXME\b/, /@ts-ignore/, /\bas any\b/, /: any(?=[,;)\]>=]|$)/m]
        .filter((banned) => banned.test(file.text) && !file.path.startsWith('test/rules/'))
        .map((banned) => `${file.path}: ${banned.source}`),
    )
    expect(wrong).toEqual([])
  })

  test('no barrel index re-exports a room', () => {
    expect(listFiles().filter((path) => /(^|\/)index\.tsx?$/.test(path))).toEqual([])
  })

  test('there is no cycle of static imports', () => {
    expect(cyclesOf(sources)).toEqual([])
  })
})

function cyclesOf(files: typeof sources): string[] {
  const byName = new Map(files.map((file) => [file.path.replace(/\.(tsx?|mjs)$/, ''), file]))
  const done = new Set<string>()
  const found: string[] = []
  const walk = (name: string, path: string[]): void => {
    const at = path.indexOf(name)
    if (at >= 0) {
      found.push([...path.slice(at), name].join(' -> '))
      return
    }
    if (done.has(name)) return
    const file = byName.get(name)
    for (const target of file?.statics ?? []) if (byName.has(target)) walk(target, [...path, name])
    done.add(name)
  }
  for (const name of byName.keys()) walk(name, [])
  return found
}
