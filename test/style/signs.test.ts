import { readFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { drawSigns, SIGNS } from '@/lib/cli/signs-face'
import { loadFaces } from '@/lib/dossier/pdf/faces'
import { listFiles, ROOT } from '@/test/rules/source-files'

const FACE = readFileSync(join(ROOT, 'app/_ui/face.ts'), 'utf8')

/** The code points that each face of the screens says it has, in the order of app/_ui/face.ts. */
const faces = [...FACE.matchAll(/'(U\+[0-9A-F,U+-]+)'/g)].map(([, range = '']) =>
  range.split(',').map((part) => {
    const [from = '', to = from] = part.slice(2).split('-')
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)] as const
  }),
)
const isIn = (face: (typeof faces)[number], code: number) => face.some(([from, to]) => code >= from && code <= to)

describe('the faces of the screens', () => {
  it('name three sets of letters', () => {
    expect(faces).toHaveLength(3)
  })

  it('have every letter and sign that the source writes', () => {
    const missing = listFiles()
      .filter((file) => /^(app|lib)\/.*\.(tsx?|css)$/.test(file))
      .flatMap((file) =>
        [...readFileSync(join(ROOT, file), 'utf8')]
          .filter((sign) => !faces.some((face) => isIn(face, sign.codePointAt(0) ?? 0)))
          .map((sign) => `${sign} in ${file}`),
      )
    expect(missing).toEqual([])
  })

  it('have the signs that are drawn, and no others', async () => {
    const { metrics } = await loadFaces()
    const named = faces.flatMap((face) => (isIn(face, 0x2265) ? face : []))
    const codes = named.flatMap(([from, to]) => Array.from({ length: to - from + 1 }, (_, at) => from + at))
    expect(String.fromCodePoint(...codes)).toBe([...SIGNS].sort().join(''))
    expect([...SIGNS].filter((sign) => !metrics.hasGlyph(sign.codePointAt(0) ?? 0, 'regular'))).toEqual([])
    expect(Buffer.compare(await readFile(join(ROOT, 'app/_ui/signs.woff2')), await drawSigns())).toBe(0)
  })
})
