import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { listFiles, ROOT, readSources } from './source-files'

const sources = readSources()

/** Room by room: what it may import of the project. The longest matching prefix decides. Type-only imports obey the same rules. */
const MAY_IMPORT: readonly (readonly [room: string, may: readonly string[]])[] = [
  ['lib/calc', ['lib/calc']],
  ['lib/domain', ['lib/domain', 'lib/calc']],
  ['lib/evidence', ['lib/evidence', 'lib/domain', 'lib/calc']],
  ['lib/photo', ['lib/photo', 'lib/domain', 'lib/calc', 'lib/evidence']],
  ['lib/dossier', ['lib/dossier', 'lib/domain', 'lib/calc', 'lib/evidence', 'lib/photo']],
  ['lib/verify', ['lib/verify', 'lib/domain', 'lib/calc', 'lib/evidence']],
  ['lib/capture/signing', ['lib/capture', 'lib/domain', 'lib/calc', 'lib/evidence']],
  ['lib/capture', ['lib/capture', 'lib/domain', 'lib/calc']],
  ['lib/server', ['lib/server', 'lib/domain', 'lib/calc', 'lib/evidence', 'lib/photo', 'lib/dossier', 'db']],
  [
    'lib/cli',
    ['lib/cli', 'lib/server', 'lib/verify', 'lib/domain', 'lib/calc', 'lib/evidence', 'lib/photo', 'lib/dossier', 'db'],
  ],
  ['db', ['db', 'lib/domain', 'lib/evidence']],
  ['app', ['app', 'lib/server', 'lib/capture', 'lib/verify', 'lib/evidence', 'lib/domain', 'lib/calc', 'lib/photo']],
]

const ROOT_ENTRIES = new Set([
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'next.config.mjs',
  'biome.json',
  'vitest.config.ts',
  'proxy.ts',
  '.gitignore',
  '.npmrc',
  '.ci',
  'app',
  'lib',
  'db',
  'public',
  'e2e',
  'test',
  'instrumentation.ts',
])

function roomOf(path: string): readonly [string, readonly string[]] | undefined {
  return MAY_IMPORT.find(([room]) => path === room || path.startsWith(`${room}/`))
}

describe('rooms', () => {
  test('every import goes the way that the table of rooms allows', () => {
    const wrong = sources.flatMap((file) => {
      const room = roomOf(file.path)
      if (!room) return []
      return file.imports
        .filter(
          (target) =>
            !target.startsWith('package:') &&
            !/\.(css|json)$/.test(target) &&
            !room[1].some((allowed) => target === allowed || target.startsWith(`${allowed}/`)),
        )
        .map((target) => `${file.path} -> ${target}`)
    })
    expect(wrong).toEqual([])
  })

  test('lib/calc and lib/domain know no clock, randomness, node module, React or database', () => {
    const wrong = sources
      .filter((file) => /^lib\/(calc|domain)\//.test(file.path))
      .flatMap((file) => [
        ...file.imports
          .filter((target) => /^package:(node:|react|next|drizzle|pg|fs|path|crypto)/.test(target))
          .map((target) => `${file.path} imports ${target}`),
        ...[
          /\bDate\.now\(/,
          /new Date\(\)/,
          /Math\.random\(/,
          /\bprocess\./,
          /\bcrypto\./,
          /\bfetch\(/,
          /\blocalStorage\b/,
        ]
          .filter((banned) => banned.test(file.text))
          .map((banned) => `${file.path} uses ${banned.source}`),
      ])
    expect(wrong).toEqual([])
  })

  // Readers of evidence run in a browser, all but the digests that ask Node.
  test('client components take nothing but types from the server', () => {
    const wrong = sources
      .filter((file) => file.path.startsWith('app/') && /^['"]use client['"]/.test(file.text.trimStart()))
      .flatMap((file) =>
        [
          ...file.text.matchAll(
            /\nimport (?!type )([^'"]*) from ['"]@\/(lib\/server|db|lib\/photo|lib\/dossier|lib\/evidence\/sha256)[^'"]*['"]/g,
          ),
        ]
          .filter((match) => !/^\{(\s*type [^,}]+,?)+\s*\}$/.test(match[1] ?? ''))
          .map((match) => `${file.path}: ${match[0].trim()}`),
      )
    expect(wrong).toEqual([])
  })

  test('the root holds only what belongs there', () => {
    const kept = new Set(listFiles().map((path) => path.split('/')[0] ?? ''))
    expect([...kept].filter((entry) => !ROOT_ENTRIES.has(entry))).toEqual([])
    expect(readdirSync(ROOT)).toContain('package.json')
  })
})
