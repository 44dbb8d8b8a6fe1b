import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { AttemptHistory } from '@/app/_parts/attempt-history'
import { streamOf } from '@/lib/domain/facts/fact'
import { foldRepair } from '@/lib/domain/fold/fold-repair'
import { demoFacts } from '@/lib/server/demo/demo-facts'

test('a withdrawal that is on this device alone is marked so, though the release it withdrew was sent', () => {
  const facts = demoFacts().facts.map((one) => one.fact)
  const state = foldRepair(facts, streamOf('repair', 'MD-0043'), '2026-05-27T14:00:00+01:00')
  const attempt = state.points.find((one) => one.no === '09')?.attempts[0]
  const withdrawn = attempt?.releases.filter((one) => one.state === 'withdrawn') ?? []
  const fallen = withdrawn[0]?.fell?.fact
  if (!attempt || !fallen) throw new Error('the demonstration has no withdrawn release at point 09')
  const marksWith = (unsent: Set<typeof fallen>) =>
    renderToStaticMarkup(createElement(AttemptHistory, { view: { attempt, names: {} }, unsent })).split('Not yet sent')
      .length - 1
  expect(marksWith(new Set())).toBe(0)
  expect(marksWith(new Set([fallen]))).toBe(1)
})
