import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type LoggerSeries, parseLoggerSeries, readingOfCell } from '@/lib/capture/logger-series'
import { loggerRemark, withColumns } from '@/lib/capture/logger-takeover'
import { loggerTextOf } from '@/lib/capture/logger-text'
import { CureRecord } from '@/lib/domain/records/wrap'
import { runsAsked } from '@/test/runs'

const read = (text: string, answers: Parameters<typeof parseLoggerSeries>[1] = {}): LoggerSeries => {
  const parsed = parseLoggerSeries(text, answers)
  if (!parsed.ok) throw new Error(parsed.error.code)
  return parsed.value
}
const shown = (series: LoggerSeries) =>
  series.columns.map((column) => column.points.map((one) => `${one.at} ${one.reading.text} ${one.reading.unit}`))

describe('a logger’s file', () => {
  test('ISO times with their offset, two probes in °C, comma between the columns', () => {
    const series = read(
      'time,6 o’clock (°C),12 o’clock (°C)\n2026-05-12T12:30:00+01:00,18.9,20.6\n2026-05-12T13:30:00+01:00,18.7,20.5\n',
    )
    expect(series.asks).toEqual([])
    expect(series.columns.map((one) => one.name)).toEqual(['6 o’clock (°C)', '12 o’clock (°C)'])
    expect(shown(series)).toEqual([
      ['2026-05-12T12:30:00+01:00 18.9 degC', '2026-05-12T13:30:00+01:00 18.7 degC'],
      ['2026-05-12T12:30:00+01:00 20.6 degC', '2026-05-12T13:30:00+01:00 20.5 degC'],
    ])
    expect(series.columns[0]?.points[0]?.reading).toMatchObject({ digits: 189, scale: 1 })
  })
  test('decimal comma with semicolons: exact digits, the text as it stands in the file', () => {
    const series = read('Datum;Fühler 1 °C\n13.05.2026 06:00;17,05\n13.05.2026 07:00;16,9\n', { offset: '+01:00' })
    expect(series.separator).toBe(';')
    expect(series.columns[0]?.points.map((one) => [one.reading.digits, one.reading.scale, one.reading.text])).toEqual([
      [1705, 2, '17,05'],
      [169, 1, '16,9'],
    ])
    expect(series.columns[0]?.points[0]?.at).toBe('2026-05-13T06:00:00+01:00')
  })
  test('tabs, lines of the logger’s own before the header, day and time in two columns, °F from the header', () => {
    const series = read('Serial CL-08\nInterval 1 h\n\nDate\tTime\tProbe A [F]\n2026-05-12\t12:30\t66.2\n', {
      offset: 'Z',
    })
    expect(shown(series)).toEqual([['2026-05-12T12:30:00Z 66.2 degF']])
    expect(series.columns[0]?.name).toBe('Probe A [F]')
  })
  test('asks for what the file does not say, and gives no point until it is answered', () => {
    const text = 'time;A;B\n05/06/2026 12:30;18.9;20.6\n'
    const open = read(text)
    expect(open.asks).toEqual(['day-order', 'offset', 'unit'])
    expect(open.columns.every((one) => one.points.length === 0)).toBe(true)
    const told = read(text, { dayOrder: 'month first', offset: '+01:00', unit: 'degF' })
    expect(shown(told)[0]).toEqual(['2026-05-06T12:30:00+01:00 18.9 degF'])
  })
  test('a day above 12 proves the order of days, so it is not asked', () => {
    expect(read('t;A °C\n13/05/2026 06:00Z;17.0\n').asks).toEqual([])
    expect(shown(read('t;A °C\n05/13/2026 06:00Z;17.0\n'))[0]).toEqual(['2026-05-13T06:00:00Z 17.0 degC'])
    expect(parseLoggerSeries('t;A °C\n05/13/2026 06:00Z;17.0\n14/05/2026 06:00Z;17.0\n', {})).toEqual({
      ok: false,
      error: { code: 'days-contradict' },
    })
  })
  test('times without a day take the day told and go on over midnight', () => {
    const text = 'time;A °C\n23:30;17.0\n00:30;16.9\n'
    expect(read(text, { offset: '+01:00' }).asks).toEqual(['day'])
    expect(shown(read(text, { offset: '+01:00', day: '2026-05-12' }))[0]).toEqual([
      '2026-05-12T23:30:00+01:00 17.0 degC',
      '2026-05-13T00:30:00+01:00 16.9 degC',
    ])
  })
  test('each bad line is named with its number and what to do; good values beside it are kept', () => {
    const series = read(
      [
        't;A °C;B °C',
        '2026-05-12T12:00Z;18.9;20.6',
        'pause;;',
        '2026-05-12T13:00Z;ERR;20.5',
        '2026-05-12T12:30Z;18.7;20.4',
        '2026-02-30T12:30Z;18.7;20.4',
        '2026-05-12T14:00Z;;20.3',
        '2026-05-12T15:00Z;18.5;20.2;7',
      ].join('\n'),
    )
    expect(series.badLines.map((line) => line.lineNo)).toEqual([3, 4, 5, 6, 7, 8])
    expect(series.badLines.map((line) => line.problem.split(':')[0])).toEqual([
      'no time in the first column',
      '“ERR” under “A °C” is no temperature',
      'not later than the line before it',
      'there is no such time',
      'no temperature under “A °C”',
      '3 values where the header names 2',
    ])
    expect(series.columns.map((one) => one.points.length)).toEqual([1, 3])
  })
  test('a decimal comma between commas is not guessed', () => {
    const series = read('t,A °C\n2026-05-12T12:00Z,18,9\n')
    expect(series.columns[0]?.points).toEqual([])
    expect(series.badLines[0]?.problem).toContain('a decimal comma needs ; or a tab')
  })
  test.each([
    ['', 'file-empty'],
    ['a,b\nc,d\n', 'no-times'],
    ['%PDF\u0000', 'not-text'],
    [`t;A °C\n${'2026-05-12T12:00Z;1\n'.repeat(5001)}`, 'too-many-lines'],
    ['x'.repeat(2_000_001), 'file-too-large'],
  ])('refuses %#', (text, code) => {
    expect(parseLoggerSeries(text, {})).toEqual({ ok: false, error: { code } })
  })
  test('letters of older loggers and of UTF-16 are read', () => {
    expect(loggerTextOf(Uint8Array.of(0x41, 0xb0, 0x43))).toBe('A°C')
    expect(loggerTextOf(Uint8Array.of(0xff, 0xfe, 0x41, 0, 0xb0, 0))).toBe('A°')
    expect(loggerTextOf(new TextEncoder().encode('6 o’clock'))).toBe('6 o’clock')
  })
})

test('any series of temperatures comes back digit by digit, whatever the separator and the decimal mark', () => {
  const separator = fc.constantFrom(',' as const, ';' as const, '\t' as const)
  fc.assert(
    fc.property(
      separator,
      fc.boolean(),
      fc.array(fc.record({ digits: fc.integer({ min: -400, max: 1500 }), stepMin: fc.integer({ min: 1, max: 600 }) }), {
        minLength: 1,
        maxLength: 60,
      }),
      (mark, isComma, rows) => {
        let ms = Date.UTC(2026, 4, 12, 12)
        const wanted = rows.map((row) => {
          ms += row.stepMin * 60_000
          const text = `${row.digits < 0 ? '-' : ''}${Math.floor(Math.abs(row.digits) / 10)}${isComma && mark !== ',' ? ',' : '.'}${Math.abs(row.digits) % 10}`
          return { at: `${new Date(ms).toISOString().slice(0, 19)}Z`, text, digits: row.digits }
        })
        const file = ['time', 'probe °C'].join(mark) + wanted.map((one) => `\r\n${one.at}${mark}${one.text}`).join('')
        const series = read(file)
        expect(series.badLines).toEqual([])
        expect(
          series.columns[0]?.points.map((one) => ({
            at: one.at,
            text: one.reading.text,
            digits: one.reading.digits + 0,
          })),
        ).toEqual(wanted.map((one) => ({ ...one, digits: one.digits + 0 })))
      },
    ),
    { numRuns: runsAsked() },
  )
})

test('arbitrary text never throws and never yields a reading that is not in it', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 400 }), (text) => {
      const parsed = parseLoggerSeries(text, { offset: 'Z', day: '2026-05-12', dayOrder: 'day first', unit: 'degC' })
      if (!parsed.ok) return
      for (const column of parsed.value.columns)
        for (const point of column.points) expect(text).toContain(point.reading.text)
    }),
    { numRuns: runsAsked() },
  )
})

test('a unit in the cell that contradicts its column is no temperature', () => {
  expect(readingOfCell('17.1 °C', 'degC', ';')).toMatchObject({ digits: 171, text: '17.1' })
  expect(readingOfCell('17.1 °F', 'degC', ';')).toBeNull()
  expect(readingOfCell('1.234,5', 'degC', ';')).toBeNull()
})

describe('taking a file into the form', () => {
  const series = read('t;A °C;Air °C\n2026-05-12T12:00Z;18.9;15.0\n2026-05-12T13:00Z;18.8;15.1\n')
  const keyed = { place: 'keyed probe', clock: '12', series: [{ at: '2026-05-12T12:00:00Z' }] }
  test('keeps what was keyed, fills no probe that was begun, and makes a record of it', () => {
    const taken = withColumns({ probes: [keyed, {}], ambient: undefined }, series, { 0: '6', 1: 'ambient' })
    expect(taken.ok && taken.value.probes).toMatchObject([keyed, { place: 'A °C', clock: '6' }])
    const record = CureRecord.safeParse({
      type: 'cure',
      startedAt: '2026-05-12T12:00:00Z',
      endedAt: '2026-05-12T13:00:00Z',
      probes: taken.ok ? taken.value.probes.slice(1) : [],
      ambient: taken.ok ? taken.value.ambient : [],
      interrupted: 'no',
      postCure: 'no',
    })
    expect(record.success).toBe(true)
  })
  test('ambient temperatures that are there are not replaced', () => {
    expect(withColumns({ probes: [], ambient: [{ at: 'x' }] }, series, { 1: 'ambient' })).toEqual({
      ok: false,
      error: { code: 'ambient-present' },
    })
  })
  test('a column without a choice is not taken, and the remark says where the rest came from', () => {
    const taken = withColumns({ probes: undefined, ambient: undefined }, series, { 0: 'leave out' })
    expect(taken).toEqual({ ok: true, value: { probes: [], ambient: null } })
    expect(loggerRemark('Blanket on.', 'CL-08.csv', series, { offset: '+01:00' })).toBe(
      'Blanket on. From logger file CL-08.csv, 2 lines; clock UTC+01:00 as told.',
    )
  })
})
