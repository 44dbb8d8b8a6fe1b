import { describe, expect, it } from 'vitest'
import { decimal } from '@/lib/domain/decimal'
import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { BatchState, InstrumentState, PersonState, Quarantine } from '@/lib/domain/fold/store-states'
import { judgeCriterion, judgePoint } from '@/lib/domain/judge/judge-criterion'
import { showFinding } from '@/lib/domain/judge/show-finding'
import { measured } from '@/lib/domain/reading'
import type { Rule } from '@/lib/domain/specification'
import { HARDNESS } from './demo-grids'
import { at, contextOf, criterion, fact, hardness, limit, person, recordedAt, stream } from './judge-fixtures'

const envelope = <
  K extends 'certificate-recorded' | 'found-wrong' | 'check-made' | 'qualification-recorded' | 'batch-recalled',
>(
  kind: K,
  no: number,
  of: string,
  when: string,
  body: FactOf<K>['body'],
) =>
  ({
    v: 1,
    id: fact(no),
    stream: stream(of),
    kind,
    observedAt: at(when),
    observedBy: person('QI'),
    enteredAt: at(when),
    enteredBy: person('QI'),
    device: { id: 'd', clockOffsetMs: null },
    body,
  }) as FactOf<K>

const certificate = (due: string, from?: string, extra = {}) =>
  envelope('certificate-recorded', 9001, 'instrument:HD-03', '01-05 08:00', {
    certificate: 'C-3291',
    dueOn: due,
    ...(from ? { calibratedOn: from } : {}),
    ...extra,
  })
const instrument = (changes: Partial<InstrumentState> = {}): InstrumentState => ({
  stream: stream('instrument:HD-03'),
  number: 'HD-03',
  kind: 'durometer',
  certificates: [certificate('2026-11-30', '2025-12-01')],
  checks: [],
  foundWrong: [],
  isQuarantined: false,
  quarantines: [],
  ...changes,
})
const withInstrument = (changes: Partial<InstrumentState> = {}) => ({
  instruments: { [stream('instrument:HD-03')]: instrument(changes) },
})
const judge = (rule: Rule, records: ReturnType<typeof hardness>[], more: Parameters<typeof contextOf>[2] = {}) =>
  judgeCriterion(criterion(rule), contextOf([criterion(rule)], records, more))

describe('instruments in force on the day of use', () => {
  const rule: Rule = { kind: 'instruments-valid' }
  const used = hardness('05-13 07:25', HARDNESS['MD-0041'])
  it.each([
    [{}, 'pass', undefined],
    [{ certificates: [certificate('2026-05-13', '2025-05-13')] }, 'pass', undefined],
    [{ certificates: [certificate('2026-05-12', '2025-05-13')] }, 'fail', 'certificate-lapsed'],
    [
      { certificates: [certificate('2026-05-12', '2025-05-13'), certificate('2027-05-12', '2026-05-14')] },
      'fail',
      'certificate-lapsed',
    ],
    [{ certificates: [certificate('2027-05-12', '2026-05-14')] }, 'not proven', 'certificate-missing'],
    [{ certificates: [certificate('2026-11-30')] }, 'pass', undefined],
    [{ certificates: [] }, 'not proven', 'certificate-missing'],
    [
      {
        certificates: [
          certificate('2026-11-30', '2025-12-01', { range: { min: decimal('0'), max: decimal('80'), unit: 'ShoreD' } }),
        ],
      },
      'fail',
      'outside-certified-range',
    ],
  ] as const)('%#', (changes, verdict, code) => {
    const result = judge(rule, [used], withInstrument(changes as Partial<InstrumentState>))
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })

  it('fails what was refused at its check, and what is quarantined while it is being keyed', () => {
    const refused = recordedAt('05-12 08:02', {
      type: 'instruments',
      instruments: [
        {
          instrument: stream('instrument:HD-03'),
          certificate: 'C-3291',
          coverage: 'none',
          when: 'before',
          decision: 'refused',
        },
      ],
    })
    expect(judge(rule, [used], { ...withInstrument(), otherRecords: [refused] })).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'instrument-refused' }],
    })
    expect(judge(rule, [used]).findings[0]?.code).toBe('instrument-unknown')
    expect(judge(rule, []).findings[0]?.code).toBe('no-instrument')
  })

  it.each([
    ['77', 'pass'],
    ['78', 'pass'],
    ['78.1', 'fail'],
    ['75.9', 'fail'],
  ] as const)('checks %s on a reference of 77 ± 1', (read, verdict) => {
    const line = recordedAt('05-12 08:02', {
      type: 'instruments',
      instruments: [
        {
          instrument: stream('instrument:HD-03'),
          certificate: 'C-3291',
          reference: measured('77', 'ShoreD'),
          read: measured(read, 'ShoreD'),
          tolerance: measured('1', 'ShoreD'),
          coverage: 'full scale',
          when: 'before',
          decision: 'taken',
        },
      ],
    })
    const result = judge(rule, [line], withInstrument())
    expect([result.verdict, result.findings[0]?.code]).toEqual([
      verdict,
      verdict === 'fail' ? 'check-outside-tolerance' : undefined,
    ])
  })
})

describe('HD-03 found reading 3 too high on 06-04, last good full check 04-28', () => {
  const check = (when: string, coverage: 'full scale' | 'mid scale', no: number) =>
    envelope('check-made', no, 'instrument:HD-03', when, {
      coverage,
      reference: measured('77', 'ShoreD'),
      read: measured('77', 'ShoreD'),
      tolerance: measured('1', 'ShoreD'),
      result: 'within',
    })
  const wrong = envelope('found-wrong', 9100, 'instrument:HD-03', '06-04 09:00', {
    error: measured('3', 'ShoreD'),
    how: 'reference block',
  })
  const doubtful = withInstrument({
    foundWrong: [wrong],
    checks: [
      check('04-28 07:00', 'full scale', 9101),
      check('05-12 07:00', 'mid scale', 9102),
      check('05-22 07:00', 'mid scale', 9103),
    ],
  })
  it.each([
    ['MD-0041', '05-13 07:25', '74', '77', '73', '76.45', 'fail', 'fail'],
    ['MD-0042 T3', '05-22 08:30', '74', '77', '73', '75.40', 'fail', 'fail'],
    ['MD-0044', '05-14 14:10', '72', '75', '71', '73.25', 'fail', 'fail'],
  ] as const)('%s', (name, when, least, mean, worst, shownMean, eachVerdict, meanVerdict) => {
    const criteria = [
      criterion({ kind: 'each', quantity: 'hardness', min: limit(least, 'ShoreD') }, '16', 'E1'),
      criterion({ kind: 'mean', quantity: 'hardness', min: limit(mean, 'ShoreD') }, '16', 'M1'),
      criterion({ kind: 'instruments-valid' }, '16', 'I1'),
    ]
    const [each, average, valid] = judgePoint(contextOf(criteria, [hardness(when, HARDNESS[name])], doubtful))
    expect([each?.verdict, average?.verdict, valid?.verdict]).toEqual(['pass', 'pass', 'pass'])
    expect(each?.questions).toMatchObject([
      { cause: fact(9100), causeKind: 'instrument found wrong', corrected: { verdict: eachVerdict } },
    ])
    expect(each?.questions[0]?.corrected?.found).toContain(`lowest ${worst} Shore D`)
    expect(average?.questions[0]?.corrected).toEqual({ found: `mean ${shownMean} Shore D of 20`, verdict: meanVerdict })
    expect(valid?.questions).toHaveLength(1)
  })
  it('leaves readings before the last good full check, and those of another instrument, alone', () => {
    const each = criterion({ kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') })
    expect(
      judgeCriterion(each, contextOf([each], [hardness('04-27 10:00', HARDNESS['MD-0041'])], doubtful)).questions,
    ).toEqual([])
    expect(
      judgeCriterion(
        each,
        contextOf([each], [hardness('05-13 07:25', HARDNESS['MD-0041'], 'instrument:HD-05')], doubtful),
      ).questions,
    ).toEqual([])
  })
  it('without a known error asks the question and corrects nothing', () => {
    const unknown = withInstrument({ foundWrong: [{ ...wrong, body: { how: 'dropped' } }], checks: [] })
    const result = judge(
      { kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') },
      [hardness('05-13 07:25', HARDNESS['MD-0041'])],
      unknown,
    )
    expect(result.questions).toHaveLength(1)
    expect(result.questions[0]).not.toHaveProperty('corrected')
  })
})

describe('guard band', () => {
  const guarded = (text: string, uncertainty: string | null) => {
    const each = criterion({ kind: 'each', quantity: 'hardness', min: limit('74', 'ShoreD') })
    const base = contextOf(
      [each],
      [hardness('05-13 07:25', { 12: text })],
      withInstrument({
        certificates: [
          certificate(
            '2026-11-30',
            '2025-12-01',
            uncertainty ? { expandedUncertainty: measured(uncertainty, 'ShoreD') } : {},
          ),
        ],
      }),
    )
    return judgeCriterion(each, {
      ...base,
      specification: { ...base.specification, body: { ...base.specification.body, decisionRule: 'guard band' } },
    })
  }
  it.each([
    ['75', '1', 'pass', undefined],
    ['74.9', '1', 'not proven', 'inside-guard-band'],
    ['73', '1', 'not proven', 'inside-guard-band'],
    ['72.9', '1', 'fail', 'reading-below-limit'],
    ['74', '0', 'pass', undefined],
    ['80', null, 'not proven', 'uncertainty-missing'],
  ] as const)('%s with U %s', (text, uncertainty, verdict, code) => {
    const result = guarded(text, uncertainty)
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
})

/** In quarantine from one moment to another, or yet. */
const quarantine = (from: string, to: string | null): Quarantine => ({
  from: at(from),
  to: to && at(to),
  fact: fact(9400),
  reason: 'dropped',
})

describe('an instrument in quarantine', () => {
  const rule: Rule = { kind: 'instruments-valid' }
  const used = hardness('05-13 07:25', HARDNESS['MD-0041'])
  it.each([
    ['lifted before its use', quarantine('05-12 09:00', '05-13 07:00'), 'pass'],
    ['lifted at the moment of its use', quarantine('05-12 09:00', '05-13 07:25'), 'pass'],
    ['not yet lifted at its use', quarantine('05-12 09:00', '05-13 07:26'), 'fail'],
    ['standing', quarantine('05-13 07:25', null), 'fail'],
    ['begun after its use', quarantine('05-13 07:26', null), 'pass'],
  ] as const)('%s', (_case, time, verdict) => {
    const result = judge(rule, [used], withInstrument({ isQuarantined: time.to === null, quarantines: [time] }))
    expect([result.verdict, result.findings[0]?.code]).toEqual([
      verdict,
      verdict === 'fail' ? 'instrument-quarantined' : undefined,
    ])
    if (verdict === 'fail') expect(result.findings[0]?.facts).toContain(fact(9400))
  })
  it('says since when and why, also while it is being keyed', () => {
    const changes = { isQuarantined: true, quarantines: [quarantine('05-12 09:00', null)] }
    const [finding] = judge(rule, [{ ...used, fact: null }], withInstrument(changes)).findings
    expect(finding && showFinding(finding)).toBe(
      'HD-03 used 2026-05-13 07:25 +01:00 while in quarantine since 2026-05-12 09:00 +01:00: dropped (7.3).',
    )
  })
})

describe('batches in date at use', () => {
  const rule: Rule = { kind: 'batches-valid' }
  const batch = (changes: Partial<BatchState> = {}): BatchState => ({
    stream: stream('batch:PR-357'),
    number: 'PR-357',
    received: { number: 'PR-357', role: 'primer', product: 'primer', expiresOn: '2026-06-30', quantity: null },
    expiresOn: '2026-06-30',
    isQuarantined: false,
    quarantines: [],
    recalled: null,
    ...changes,
  })
  const primer = (when: string) =>
    recordedAt(when, { type: 'primer', batch: stream('batch:PR-357'), brushedAt: at(when), brushedBy: person('T1') })
  const recall = (when: string) =>
    envelope('batch-recalled', 9300, 'batch:PR-357', when, { reason: 'maker recall', by: 'maker' })
  it.each([
    ['06-30 23:59', {}, 'pass', undefined],
    ['07-01 00:00', {}, 'fail', 'batch-expired'],
    ['05-12 11:40', { expiresOn: null }, 'pass', undefined],
    ['05-12 11:40', { recalled: recall('05-12 11:40') }, 'fail', 'batch-recalled'],
    ['05-12 11:40', { recalled: recall('06-02 09:00'), isQuarantined: true }, 'pass', undefined],
  ] as const)('%s %#', (when, changes, verdict, code) => {
    const result = judge(rule, [primer(when)], { batches: { [stream('batch:PR-357')]: batch(changes) } })
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
  it('asks a question when the recall came after the use', () => {
    const result = judge(rule, [primer('05-12 11:40')], {
      batches: { [stream('batch:PR-357')]: batch({ recalled: recall('06-02 09:00'), isQuarantined: true }) },
    })
    expect(result.questions).toEqual([
      { cause: fact(9300), causeKind: 'batch recalled', stream: stream('batch:PR-357'), since: at('06-02 09:00') },
    ])
  })
  it('judges a material looked at beforehand on the day of its planned use, and not a refused one', () => {
    const line = (decision: 'taken' | 'refused', plannedUseOn: string) =>
      recordedAt('06-29 08:00', {
        type: 'materials',
        plannedUseOn,
        lines: [
          {
            batch: stream('batch:PR-357'),
            role: 'primer',
            packageState: 'sound',
            certificateMatches: 'yes',
            systemQualified: 'yes',
            decision,
          },
        ],
      })
    const batches = { [stream('batch:PR-357')]: batch() }
    expect(judge(rule, [line('taken', '2026-06-30')], { batches }).verdict).toBe('pass')
    expect(judge(rule, [line('taken', '2026-07-01')], { batches }).findings[0]?.code).toBe('batch-expired')
    expect(judge(rule, [line('refused', '2026-07-01')], { batches }).findings[0]?.code).toBe('no-batch')
  })
  it.each([
    ['lifted before', quarantine('05-10 09:00', '05-12 11:00'), 'pass'],
    ['standing since before', quarantine('05-10 09:00', null), 'fail'],
    ['begun after', quarantine('05-12 11:41', null), 'pass'],
  ] as const)('in quarantine, %s its use', (_case, time, verdict) => {
    const quarantined = batch({ isQuarantined: time.to === null, quarantines: [time] })
    for (const use of [primer('05-12 11:40'), { ...primer('05-12 11:40'), fact: null }]) {
      const result = judge(rule, [use], { batches: { [stream('batch:PR-357')]: quarantined } })
      expect(result.verdict).toBe(verdict)
      expect(result.findings.map(showFinding)).toEqual(
        verdict === 'pass'
          ? []
          : [
              'Batch PR-357 used 2026-05-12 11:40 +01:00 while in quarantine since 2026-05-10 09:00 +01:00: dropped (7.3).',
            ],
      )
    }
  })
  it('does not know an unknown batch', () => {
    expect(judge(rule, [primer('05-12 11:40')]).findings[0]?.code).toBe('batch-unknown')
  })
})

describe('persons qualified on the day', () => {
  const rule: Rule = { kind: 'persons-qualified' }
  type Body = FactOf<'qualification-recorded'>['body']
  const qualification = (no: number, when: string, validTo: string, more: Partial<Body> = {}) =>
    envelope('qualification-recorded', no, 'person:T2', when, {
      number: 'Q-131',
      task: 'applicator',
      geometries: ['straight'],
      validTo,
      ...more,
    })
  const someone = (name: string, qualifications: PersonState['qualifications']): PersonState => ({
    stream: stream(`person:${name}`),
    id: person(name),
    name: name === 'T2' ? 'Pavo Lindmarsh' : name,
    title: '',
    party: 'crew',
    qualifications,
  })
  const mix = (supervised?: string) =>
    recordedAt('05-19 11:35', {
      type: 'resin-mix',
      mixNo: 'M2',
      mixedBy: person('T2'),
      startedAt: at('05-19 11:35'),
      ...(supervised ? { supervisedBy: person(supervised) } : {}),
    })
  const people = (...list: PersonState[]) => ({ persons: Object.fromEntries(list.map((one) => [one.stream, one])) })
  const first = qualification(9401, '03-01 08:00', '2027-05-18')
  const corrected = qualification(9402, '05-28 10:00', '2026-05-18', {
    corrects: fact(9401),
    reason: 'year keyed wrong',
  })
  const renewed = qualification(9403, '05-30 10:00', '2028-05-30', { number: 'Q-131 B' })

  it('MD-0042: passed on the day, fails by the corrected validity and is in question; a renewal cures nothing', () => {
    expect(judge(rule, [mix()], { ...people(someone('T2', [first])), releasedAt: at('05-19 12:30') })).toMatchObject({
      verdict: 'pass',
      questions: [],
    })
    const result = judge(rule, [mix()], {
      ...people(someone('T2', [first, corrected, renewed])),
      releasedAt: at('05-19 12:30'),
    })
    expect(result).toMatchObject({
      verdict: 'fail',
      findings: [{ code: 'qualification-lapsed', mark: 'Pavo Lindmarsh', found: '2026-05-19', limit: '2026-05-18' }],
    })
    expect(result.questions).toEqual([
      {
        cause: fact(9402),
        causeKind: 'qualification corrected',
        stream: stream('person:T2'),
        since: at('05-28 10:00'),
      },
    ])
  })
  it.each([
    ['2026-05-19', 'pass', undefined],
    ['2026-05-18', 'fail', 'qualification-lapsed'],
    ['2026-05-20', 'pass', undefined],
  ] as const)('valid to %s', (validTo, verdict, code) => {
    const result = judge(rule, [mix()], people(someone('T2', [qualification(9401, '03-01 08:00', validTo)])))
    expect([result.verdict, result.findings[0]?.code]).toEqual([verdict, code])
  })
  it('names supervision by a qualified supervisor as such', () => {
    const lead = someone('L1', [
      envelope('qualification-recorded', 9404, 'person:L1', '03-01 08:00', {
        number: 'Q-064',
        task: 'supervisor',
        validTo: '2027-02-28',
      }),
    ])
    expect(judge(rule, [mix('L1')], people(someone('T2', [first, corrected]), lead))).toMatchObject({
      verdict: 'pass',
      found: 'Pavo Lindmarsh supervised by L1 Q-064',
    })
    expect(
      judge(rule, [mix('L1')], people(someone('T2', [first, corrected]), someone('L1', []))).findings[0]?.code,
    ).toBe('qualification-lapsed')
  })
  it('asks for geometry and knows what is missing', () => {
    expect(judge(rule, [mix()], { ...people(someone('T2', [first])), geometry: 'bend' }).findings[0]).toMatchObject({
      code: 'qualification-scope',
      found: 'straight',
      limit: 'bend',
    })
    expect(
      judge(
        rule,
        [mix()],
        people(
          someone('T2', [
            envelope('qualification-recorded', 1, 'person:T2', '03-01 08:00', {
              number: 'Q',
              task: 'applicator',
              validTo: '2027-01-01',
            }),
          ]),
        ),
      ).findings[0]?.code,
    ).toBe('qualification-scope-missing')
    expect(judge(rule, [mix()], people(someone('T2', [renewed]))).findings[0]?.code).toBe('qualification-not-yet')
    expect(judge(rule, [mix()], people(someone('T2', []))).findings[0]?.code).toBe('qualification-missing')
    expect(judge(rule, [mix()]).findings[0]?.code).toBe('person-unknown')
    expect(judge(rule, []).findings[0]?.code).toBe('no-person')
  })
})
