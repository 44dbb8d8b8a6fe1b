import { showDecimal } from '../decimal'
import { showClock, showMoment } from '../time'
import type { JudgeFrame } from './frame'
import { findingOf, notProven, outcomeOf, type RuleOutcome } from './outcome'
import { EVENTS } from './quantity-names'
import { showExact } from './show-exact'
import type { VerdictKind } from './verdict'
import { compareMinutes, minutesOf, type WindowRule, type WindowSpan, windowSpan } from './window-span'

/**
 * A window on observed times. Without its end it is not proven while it runs and fails once its maximum has passed. An outcome that a known clock error would
 * change is not proven, with both readings in the finding.
 */
export function judgeWindow(rule: WindowRule, frame: JudgeFrame): RuleOutcome {
  const span = windowSpan(rule, frame)
  const limit = showWindowLimit(rule)
  if (!span.start || span.elapsedMs === null || span.correctedMs === null) {
    return notProven(frame, 'window-not-started', 'not started', {
      limit,
      detail: eventWords(rule.start),
      facts: [span.end?.fact ?? null],
    })
  }
  const facts = [span.start.fact, span.end?.fact ?? null]
  const shown = { working: [workingOf(span, span.elapsedMs)], inputs: inputsOf(span) }
  const found = `${showMinutes(span.elapsedMs)}${span.end ? '' : ' so far'}`
  if (span.spoiledBy) {
    const finding = findingOf(frame, 'window-spoiled', {
      found: showClock(span.spoiledBy.at),
      limit,
      detail: eventWords(span.spoiledBy.name),
      facts: [...facts, span.spoiledBy.fact],
    })
    return outcomeOf([{ verdict: 'fail', finding }], found, shown)
  }
  const asObserved = readSpan(rule, span.elapsedMs, span.end !== null)
  const corrected = readSpan(rule, span.correctedMs, span.end !== null)
  if (asObserved.verdict !== corrected.verdict) {
    const detail = `${showMinutes(span.correctedMs)} with the known clock error taken off`
    return {
      verdict: 'not proven',
      found,
      findings: [findingOf(frame, 'clock-error', { found, limit, detail, facts })],
      ...shown,
    }
  }
  const checks = [
    asObserved.code
      ? {
          verdict: asObserved.verdict,
          finding: findingOf(frame, asObserved.code, {
            found,
            limit,
            detail: `${eventWords(rule.start)} to ${eventWords(rule.end)}`,
            facts,
          }),
        }
      : { verdict: asObserved.verdict },
  ]
  return outcomeOf(checks, found, shown)
}

/** How a span of milliseconds stands to the rule; `hasEnd` is false while the end has not happened. */
export function readSpan(rule: WindowRule, ms: number, hasEnd: boolean): { verdict: VerdictKind; code?: string } {
  const isOver = rule.maxMinutes !== undefined && compareMinutes(ms, rule.maxMinutes) > 0
  if (!hasEnd)
    return isOver ? { verdict: 'fail', code: 'window-lapsed' } : { verdict: 'not proven', code: 'window-running' }
  if (isOver) return { verdict: 'fail', code: 'window-lapsed' }
  if (rule.minMinutes !== undefined && compareMinutes(ms, rule.minMinutes) < 0)
    return { verdict: 'fail', code: 'window-too-short' }
  if (ms < 0) return { verdict: 'not proven', code: 'end-before-start' }
  return rule.minMinutes === undefined && rule.maxMinutes === undefined
    ? { verdict: 'not proven', code: 'no-limit' }
    : { verdict: 'pass' }
}

/** The limit of a window in words. */
export function showWindowLimit(rule: WindowRule): string {
  const texts = [
    rule.minMinutes ? `≥ ${showDecimal(rule.minMinutes)} min` : '',
    rule.maxMinutes ? `≤ ${showDecimal(rule.maxMinutes)} min` : '',
  ]
  return texts.filter((text) => text !== '').join(' and ') || 'no limit'
}

/** Minutes of a span, exact where they end within two places: `162 min`, `2.92 min`. */
export function showMinutes(ms: number): string {
  return `${showExact(minutesOf(ms))} min`
}

function workingOf(span: WindowSpan, ms: number): string {
  return `${span.start ? showClock(span.start.at) : '?'} to ${span.end ? showClock(span.end.at) : 'now'} = ${showMinutes(ms)}`
}

function inputsOf({ start, end, spoiledBy }: WindowSpan): NonNullable<RuleOutcome['inputs']> {
  return [start, end, spoiledBy].flatMap((event) =>
    event
      ? [
          {
            label: `${eventWords(event.name)}${event.of ? `, ${event.of}` : ''}`,
            value: showMoment(event.at),
            fact: event.fact,
          },
        ]
      : [],
  )
}

function eventWords(name: string): string {
  return (EVENTS as Partial<Record<string, string>>)[name] ?? name
}
