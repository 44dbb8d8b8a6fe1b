import { expect, test } from 'vitest'
import { QI } from '@/lib/server/demo/demo-people'
import { at, DEMO_START } from '@/lib/server/demo/demo-time'
import { startScript } from '@/lib/server/demo/fact-script'
import { foldDemo } from './folded-demo'

/** An issue as the seed's dossiers state it, without the file: what a fold asks of it is its moment and its revision. */
function issueOf(number: string, issuedAt: string) {
  const script = startScript()
  return script.write({
    stream: `dossier:${number}`,
    kind: 'dossier-issued',
    at: issuedAt,
    by: QI,
    body: {
      repair: `repair:${number}`,
      revision: 0,
      purpose: 'final',
      changes: [],
      sha256: 'a'.repeat(64),
      sizeBytes: 1,
      pageCount: 1,
      asOf: issuedAt,
      factCount: 1,
      template: 'test',
      rules: 'fold 1',
      missing: [],
    },
  })
}

test.each([
  ['MD-0041', at('05-15', '14:00'), 'in service', false],
  ['MD-0044', at('05-16', '10:00'), 'in service', false],
  ['MD-0042', at('05-25', '15:00'), 'accepted under concession', true],
] as const)('%s after its issue: %s %s, revision due %s', (number, issuedAt, status, isDue) => {
  const state = foldDemo(number, DEMO_START, [issueOf(number, issuedAt)])
  expect(state).toMatchObject({ status, revisionDue: isDue })
  expect(state.issues.map((one) => one.fact.body.revision)).toEqual([0])
})

test('the dossier of MD-0042 was up to date until the qualification was corrected', () => {
  const issue = issueOf('MD-0042', at('05-25', '15:00'))
  expect(foldDemo('MD-0042', at('05-28', '10:00'), [issue]).revisionDue).toBe(false)
  expect(foldDemo('MD-0042', at('05-28', '10:06'), [issue]).revisionDue).toBe(true)
})
