import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { runFlips } from './flips'
import { OUTBOX_STEP } from './outbox'

type Step = { name: string; runs: number; files: string[] }
type Tally = {
  numPassedTests: number
  numFailedTests: number
  testResults: { assertionResults: { status: string; fullName: string }[] }[]
}

const PROPERTIES = [
  'test/calc/properties.test.ts',
  'test/calc/identity-properties.test.ts',
  'test/calc/gs1-labels.test.ts',
  'test/photo/likeness.test.ts',
  'test/evidence/canonical-bytes.test.ts',
  'test/domain/judge/judge-properties.test.ts',
  'test/domain/judge/judge-guard.test.ts',
]
const STEPS: Step[] = [
  { name: 'properties', runs: 5000, files: PROPERTIES },
  { name: 'reference cases', runs: 1, files: ['test/calc/vectors.test.ts'] },
  { name: 'photos with changed bytes, of four kinds', runs: 500, files: ['test/photo/changed-bytes.test.ts'] },
  { name: 'writers killed, every third with the server', runs: 200, files: ['test/log/kills.test.ts'] },
  OUTBOX_STEP,
]

const folder = mkdtempSync(join(tmpdir(), 'underwrap-long-'))
let failed = 0
for (const step of STEPS) failed += runStep(step)
failed += await runFlips()
failed += runLongBrowser()
failed += runMutation()
rmSync(folder, { recursive: true })
process.exitCode = failed > 0 ? 1 : 0

/**
 * Mutation testing of lib/calc: each formula is changed in thousands of small ways and its tests must notice at least 85 in a
 * hundred of the changes (the limit stands in stryker.config.json). Gives 1 when they do not.
 */
function runMutation(): number {
  const started = performance.now()
  const ran = spawnSync(
    process.execPath,
    ['node_modules/@stryker-mutator/core/bin/stryker.js', 'run', 'test/long/stryker.config.json'],
    { stdio: ['ignore', 'inherit', 'inherit'] },
  )
  const seconds = ((performance.now() - started) / 1000).toFixed(1)
  console.log(`${ran.status === 0 ? 'pass' : 'FAIL'}  mutations of lib/calc, ${seconds} s`)
  return ran.status === 0 ? 0 : 1
}

/** Every screen and form by keyboard, thumb and paper, on the present build. Gives 1 when a browser test failed. */
function runLongBrowser(): number {
  const started = performance.now()
  const ran = spawnSync(
    process.execPath,
    ['node_modules/@playwright/test/cli.js', 'test', '-c', 'e2e/playwright.config.ts', '--reporter=line'],
    { stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, E2E_LONG: '1' } },
  )
  const seconds = ((performance.now() - started) / 1000).toFixed(1)
  console.log(`${ran.status === 0 ? 'pass' : 'FAIL'}  browser tests of every screen and form, ${seconds} s`)
  return ran.status === 0 ? 0 : 1
}

/** One run of the test runner; tells its figures and gives how many tests failed. */
function runStep({ name, runs, files }: Step): number {
  const report = join(folder, 'report.json')
  rmSync(report, { force: true })
  const started = performance.now()
  const ran = spawnSync(
    process.execPath,
    [
      'node_modules/vitest/vitest.mjs',
      'run',
      ...files,
      '--testTimeout=1800000',
      '--reporter=dot',
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    { stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, UNDERWRAP_RUNS: String(runs) } },
  )
  const seconds = ((performance.now() - started) / 1000).toFixed(1)
  const told: Tally = JSON.parse(readFileSync(report, 'utf8'))
  const skipped = told.testResults
    .flatMap((file) => file.assertionResults)
    .filter((test) => test.status !== 'passed' && test.status !== 'failed')
  console.log(
    `${ran.status === 0 ? 'pass' : 'FAIL'}  ${name}: ${told.numPassedTests} passed, ${told.numFailedTests} failed, ${skipped.length} skipped, ${runs} runs of each property, ${seconds} s`,
  )
  for (const test of skipped) console.log(`      skipped: ${test.fullName}`)
  return Math.max(told.numFailedTests, ran.status === 0 ? 0 : 1)
}
