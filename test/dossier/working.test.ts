import { expect, test } from 'vitest'
import type { Sha256 } from '@/lib/domain/facts/fact'
import { layOutDossier } from '@/lib/dossier/build-dossier'
import { loadFaces } from '@/lib/dossier/pdf/faces'
import { attemptOf, FACTS, foldDemo } from '@/test/demo/folded-demo'

test('the annex prints a working for every criterion of every attempt, with its formula and its facts by digest', async () => {
  const { metrics } = await loadFaces()
  const state = foldDemo('MD-0042')
  const first = attemptOf(state, '16', 2).records[0]?.fact.id
  const digest = 'ab12cd34ef56ab78'.padEnd(64, '0') as Sha256
  const laidOut = layOutDossier(
    {
      state,
      facts: FACTS,
      receipts: new Map(),
      sha256Of: new Map(first ? [[first, digest]] : []),
      head: { kind: 'for review' },
      organisation: 'Plumbline-and-Thrice Inspection',
      isDemo: true,
    },
    new Set(),
    metrics,
  )
  const annex = laidOut.sectionSheets.find((one) => one.no === '24')
  const text = laidOut.sheets
    .slice((annex?.sheetNo ?? 1) - 1)
    .flatMap((sheet) => sheet.items.flatMap((one) => (one.kind === 'text' ? [one.text] : [])))
    .join(' ')
  const missing = state.points.flatMap((point) =>
    point.attempts.flatMap((attempt) =>
      attempt.records.length === 0
        ? []
        : attempt.criteria.map((one) => one.criterion.id).filter((id) => !text.includes(id)),
    ),
  )
  expect(missing).toEqual([])
  expect(text.replace(/\s+/g, '')).toContain('69−74=-5ShoreD,outside')
  expect(text).toContain('ab12cd34ef56ab78')
})
