import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { installIfStale, root } from './install-if-stale.mjs'

installIfStale()
const require = createRequire(join(root, 'package.json'))
const reports = mkdtempSync(join(tmpdir(), 'underwrap-reports-'))
const isCi = process.env.CI === '1' || process.env.CI === 'true'
const total = { passed: 0, failed: 0, skipped: [] }

/** Run a step with node; false when it failed. */
function run(title, parameters, env = {}) {
  console.log(`\n== ${title}`)
  const ran = spawnSync(process.execPath, parameters, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1', ...env },
  })
  return ran.status === 0
}

/** A step without tests of its own counts only when it fails. */
function demandStep(title, parameters) {
  const isDone = run(title, parameters)
  if (!isDone) total.failed += 1
  return isDone
}

function runUnits() {
  const tally = join(reports, 'vitest.json')
  const isDone = run(
    'unit and contract tests',
    ['node_modules/vitest/vitest.mjs', 'run', '--reporter=dot', '--reporter=./lib/cli/vitest-tally.mjs'],
    { UNDERWRAP_TALLY: tally, NODE_ENV: 'test' },
  )
  const told = existsSync(tally) ? JSON.parse(readFileSync(tally, 'utf8')) : { passed: 0, failed: 1, skipped: [] }
  total.passed += told.passed
  total.failed += Math.max(told.failed, isDone ? 0 : 1)
  total.skipped.push(...told.skipped)
}

/** Debian's Chromium, else the one that Playwright brought; null when there is none. */
function chromium() {
  return (
    ['/usr/bin/chromium', require('@playwright/test').chromium.executablePath()].find(
      (path) => path && existsSync(path),
    ) ?? null
  )
}

function freePort() {
  return new Promise((settle) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address()
      probe.close(() => settle(port))
    })
  })
}

const PLAYWRIGHT = ['node_modules/@playwright/test/cli.js', 'test', '-c', 'e2e/playwright.config.ts']

function titlesOf(suite, path = []) {
  const own = (suite.specs ?? []).flatMap((spec) =>
    spec.tests.map((test) => ({
      title: [...path, spec.title].join(' > '),
      status: test.status,
      reason: test.annotations?.find((one) => one.type === 'skip')?.description ?? '',
    })),
  )
  return [...own, ...(suite.suites ?? []).flatMap((inner) => titlesOf(inner, [...path, inner.title]))]
}

async function runBrowser() {
  if (!existsSync(join(root, 'e2e', 'playwright.config.ts'))) return
  const report = join(reports, 'playwright.json')
  const browser = chromium()
  if (!browser) {
    spawnSync(process.execPath, [...PLAYWRIGHT, '--list', '--reporter=json'], {
      cwd: root,
      env: { ...process.env, PLAYWRIGHT_JSON_OUTPUT_NAME: report },
    })
    const listed = existsSync(report)
      ? JSON.parse(readFileSync(report, 'utf8')).suites.flatMap((suite) => titlesOf(suite, [suite.title]))
      : [{ title: 'browser tests' }]
    total.skipped.push(...listed.map(({ title }) => ({ title, reason: 'chromium' })))
    return
  }
  const isDone = run('browser tests', [...PLAYWRIGHT, '--reporter=line,json'], {
    PLAYWRIGHT_JSON_OUTPUT_NAME: report,
    CHROMIUM: browser,
    E2E_PORT: String(await freePort()),
  })
  const told = existsSync(report) ? JSON.parse(readFileSync(report, 'utf8')) : null
  const failed = told ? told.stats.unexpected + told.errors.length : 1
  total.passed += told ? told.stats.expected + told.stats.flaky : 0
  total.failed += Math.max(failed, isDone ? 0 : 1)
  total.skipped.push(
    ...(told?.suites ?? [])
      .flatMap((suite) => titlesOf(suite, [suite.title]))
      .filter((test) => test.status === 'skipped'),
  )
}

demandStep('types', ['node_modules/typescript/bin/tsc', '-p', '.', '--noEmit'])
demandStep('lint', ['node_modules/@biomejs/biome/bin/biome', 'check', '.'])
// The build comes first: a unit test reads from the built app which pages and actions there are.
const isBuilt = demandStep('build', ['lib/cli/build.mjs'])
runUnits()
demandStep('every branch of lib/calc', [
  'node_modules/vitest/vitest.mjs',
  'run',
  'test/calc',
  '--coverage',
  '--reporter=dot',
])
if (isBuilt) await runBrowser()
rmSync(reports, { recursive: true, force: true })

if (total.skipped.length > 0) {
  console.log('\n== skipped')
  const byReason = Map.groupBy
    ? Map.groupBy(total.skipped, (one) => one.reason)
    : total.skipped.reduce((map, one) => map.set(one.reason, [...(map.get(one.reason) ?? []), one]), new Map())
  for (const [reason, tests] of byReason) {
    console.log(`${tests.length} skipped, missing: ${reason || 'no reason given'}`)
    for (const test of tests) console.log(`  ${test.title}`)
    // What lies beside this project and who runs it are no tools; everything else must be there in CI.
    if (isCi && !/beside this project|^root:/.test(reason)) total.failed += tests.length
  }
}
console.log(`\n${total.passed} passed, ${total.failed} failed, ${total.skipped.length} skipped`)
process.exitCode = total.failed > 0 ? 1 : 0
