import { writeFileSync } from 'node:fs'

/** Vitest reporter that keeps what `npm test` sums up: counts, and every skipped test with its reason. */
export default class Tally {
  passed = 0
  failed = 0
  skipped = []

  onTestCaseResult(test) {
    const result = test.result()
    if (result.state === 'passed') this.passed += 1
    else if (result.state === 'failed') this.failed += 1
    else
      this.skipped.push({
        title: test.fullName,
        reason: result.note ?? /\[needs ([^\]]+)\]/.exec(test.fullName)?.[1] ?? '',
      })
  }

  onTestRunEnd(modules, unhandledErrors) {
    const broken = modules.filter((module) => module.errors().length > 0).length
    writeFileSync(
      process.env.UNDERWRAP_TALLY,
      JSON.stringify({
        passed: this.passed,
        failed: this.failed + broken + unhandledErrors.length,
        skipped: this.skipped,
      }),
    )
  }
}
