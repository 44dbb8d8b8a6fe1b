import { beforeAll, describe, expect, test } from 'vitest'
import { layOutDossier } from '@/lib/dossier/build-dossier'
import { loadFaces } from '@/lib/dossier/pdf/faces'
import { FACTS, foldDemo, REPAIRS } from '@/test/demo/folded-demo'

const printed = new Map<string, string>()
beforeAll(async () => {
  const { metrics } = await loadFaces()
  for (const number of REPAIRS) {
    const laidOut = layOutDossier(
      {
        state: foldDemo(number),
        facts: FACTS,
        receipts: new Map(),
        sha256Of: new Map(),
        head: { kind: 'for review' },
        organisation: 'Plumbline-and-Thrice Inspection',
        isDemo: true,
      },
      new Set(),
      metrics,
    )
    const texts = laidOut.sheets.flatMap((sheet) =>
      sheet.items.flatMap((one) => (one.kind === 'text' ? [one.text] : [])),
    )
    printed.set(number, texts.join(' ').replaceAll('\u00a0', ' '))
  }
})

describe.each(REPAIRS)('%s', (number) => {
  test('prints every equation with its result, what governs, and who approved the sheet', () => {
    const text = printed.get(number) ?? ''
    expect(text).toContain('The laminate round the pipe governs:')
    for (const result of ['ε = 0.00180', 't round =', 't hole =', 'n·tply =', 'taper =']) expect(text).toContain(result)
    expect(text).toContain('Plies against wall, pressure and hole')
    expect(text).toContain(`DS-${number.slice(3)} rev 0`)
    expect(text).not.toMatch(/U\+[0-9A-F]{4}/)
  })

  test('prints quantities computed beside those used', () => {
    const text = printed.get(number) ?? ''
    expect(text).toContain('Quantities: computed, and used')
    expect(text).toContain(number === 'MD-0044' ? '424.4 mm' : 'Laminating resin, part A')
  })
})
