import { describe, expect, test } from 'vitest'
import { isRefused, type Refusal } from '@/lib/calc/refusal'
import { designChoices, designFigures } from '@/lib/domain/design/design-figures'
import { type DesignSheet, designSheet } from '@/lib/domain/design/design-sheet'
import { bandOf, bondOf, extentOf, overlapOf, plugOf } from '@/lib/domain/design/required-extent'
import { laminateOf, overHole, requiredLaminate, strainOf, valuesOf } from '@/lib/domain/design/required-laminate'
import type { RepairState } from '@/lib/domain/fold/repair-state'
import { measured } from '@/lib/domain/reading'
import { foldDemo, REPAIRS } from '@/test/demo/folded-demo'
import { foldProperties } from './demo-design'

function answered<T extends object>(answer: T | null): Exclude<T, Refusal> {
  if (answer === null || isRefused(answer)) throw new Error(`refused: ${JSON.stringify(answer)}`)
  return answer as Exclude<T, Refusal>
}

const resultsOf = (sheet: DesignSheet, id: string): string[] =>
  sheet.equations.find((one) => one.id === id)?.results.map((one) => `${one.symbol} = ${one.text}`) ?? []
const inputsOf = (state: RepairState) => ({ values: valuesOf(designFigures(state)), choices: designChoices(state) })

describe('MD-0041 by hand', () => {
  const state = foldDemo('MD-0041')
  const { values, choices } = inputsOf(state)
  const pressureMpa = 1.35
  const greatestDiameterMm = 273.1
  const nominalWallMm = 9.3
  const [hoopModulus, axialModulus, poisson, strain] = [24_000, 18_000, 0.18, 0.0018]
  const hoopLoad = (pressureMpa * greatestDiameterMm) / 2
  const closedEndLoad = (pressureMpa * greatestDiameterMm) / 4

  test('allowed strain: 0.80 of 0.0024 less 20 K times a difference of 6 millionths', () => {
    expect(answered(strainOf(values)).eps).toBeCloseTo(0.8 * 0.0024 - 20 * 6e-6, 12)
    expect(resultsOf(designSheet(state), 'strain')).toEqual(['ε = 0.00180'])
  })

  test('laminate without help from the pipe: 3.88 mm round it and 2.08 mm along it', () => {
    const round = (hoopLoad - poisson * closedEndLoad) / (hoopModulus * strain)
    const along = (closedEndLoad / axialModulus - (poisson * hoopLoad) / hoopModulus) / strain
    expect([round.toFixed(4), along.toFixed(4)]).toEqual(['3.8831', '2.0767'])
    const computed = answered(laminateOf(values, choices))
    expect(computed.hoopMm).toBeCloseTo(round, 9)
    expect(computed.axialMm).toBeCloseTo(along, 9)
  })

  test('over the hole of 4 mm: the thickness found holds the design pressure, a hundredth less does not', () => {
    const heldAt = (t: number): number => {
      const compliance = (1 - poisson ** 2) / Math.sqrt(hoopModulus * axialModulus)
      const bracket = compliance * ((3 * 4 ** 4) / (512 * t ** 3) + 4 / Math.PI) + (3 * 4 ** 2) / (64 * 3_400 * t)
      return 0.333 * Math.sqrt((0.001 * 150) / bracket)
    }
    const { thicknessMm } = answered(overHole(values, choices))
    expect(heldAt(thicknessMm)).toBeGreaterThanOrEqual(pressureMpa - 1e-9)
    expect(heldAt(thicknessMm * 0.99)).toBeLessThan(pressureMpa)
  })

  test('seven plies of 0.62 mm reach 3.88 mm, six do not; the wrap round the pipe governs', () => {
    expect(6 * 0.62).toBeLessThan(3.8831)
    expect(answered(requiredLaminate(values, choices))).toMatchObject({ plies: 7, governs: 'round the pipe' })
    expect(designSheet(state).governing).toEqual({
      isKnown: true,
      text: 'The laminate round the pipe governs: 3.88 mm, that is 7 plies, 4.34 mm.',
    })
  })

  test('overlap, bond length, taper and total length', () => {
    const overlapMm = 2 * Math.sqrt(greatestDiameterMm * nominalWallMm)
    const bondMm = (3 * axialModulus * strain * 6.8) / 7
    const taperMm = 5 * 6.8
    expect([overlapMm.toFixed(2), bondMm.toFixed(2), taperMm.toFixed(1)]).toEqual(['100.79', '94.42', '34.0'])
    expect(answered(overlapOf(values, choices)).overlapMm).toBeCloseTo(overlapMm, 9)
    expect(answered(bondOf(values)).overlapMm).toBeCloseTo(bondMm, 9)
    const extent = answered(extentOf(values, choices))
    expect(extent.taperMm).toBeCloseTo(taperMm, 9)
    expect(extent.totalMm).toBeCloseTo(2 * overlapMm + 60 + 2 * taperMm, 9)
  })

  test('each equation is printed with its numbers put in', () => {
    const put = Object.fromEntries(designSheet(state).equations.map((one) => [one.id, one.put]))
    expect(put.strain).toBe('ε = 0.8·0.0024 − |20·(12 − 18)·10⁻⁶|')
    expect(put.overlap).toBe('o = max(50, 2·√(273.1·9.3))')
    expect(put.plies).toBe('n = max(2, ⌈3.88/0.62⌉)')
    expect(put.bond).toBe('l = 3·18\u00a0000·0.0018·6.8/7')
    expect(put.laminate?.split('\n')[0]).toBe('t round = (1.35·273.1/2 − 0.18·92.171)/(24\u00a0000·0.0018);')
  })
})

describe('MD-0044, plug, plate and band', () => {
  const { values } = inputsOf(foldDemo('MD-0044'))

  test('band: girth 359.1, build 0.5 and half of 0.7, tail 60 give 424.4 mm', () => {
    const meanGirthMm = (359.0 + 359.2) / 2
    expect(answered(bandOf(values)).lengthMm).toBeCloseTo(meanGirthMm + 2 * Math.PI * (0.5 + 0.35) + 60, 9)
    expect(resultsOf(designSheet(foldDemo('MD-0044')), 'band')).toEqual(['lb = 424.4 mm'])
  })

  test('putty: 2.5 times an ellipse of 3 by 2 through 6.0 mm is 70.7 mm³', () => {
    expect(answered(plugOf(values)).volumeMm3).toBeCloseTo(2.5 * (Math.PI / 4) * 3 * 2 * 6, 9)
    expect(resultsOf(designSheet(foldDemo('MD-0044')), 'plug')).toEqual(['V = 70.7 mm³'])
  })

  test('an arrest without a band has no band and no plug on its sheet', () => {
    const ids = designSheet(foldDemo('MD-0041')).equations.map((one) => one.id)
    expect(ids).not.toContain('band')
    expect(ids).not.toContain('plug')
  })
})

describe.each(REPAIRS)('%s', (number) => {
  const sheet = designSheet(foldDemo(number))

  test('every equation is computed and no recorded figure is below a computed one', () => {
    expect(sheet.equations.filter((one) => one.refusal !== null)).toEqual([])
    expect(sheet.compared.filter((one) => !['not less', 'not more'].includes(one.outcome))).toEqual([])
    expect(sheet.findings).toEqual([])
  })

  test('every input names the record or the clause that it comes from', () => {
    expect(sheet.inputs.length).toBeGreaterThan(20)
    expect(sheet.inputs.filter((one) => one.from === null || one.value === null)).toEqual([])
  })

  test('as found is within the design, where the specification judges it', () => {
    expect(sheet.envelope.map((one) => one.outcome)).toEqual(sheet.envelope.map(() => 'within'))
    expect(sheet.envelope.length).toBe(5)
  })
})

describe('the cases of the pipe', () => {
  const mpa = (text: string) => measured(text, 'MPa')

  test('pipe stays elastic: D/(2 s) · Es/Ec · (P − Ps)', () => {
    const state = foldProperties('MD-0041', (own) => ({
      ...own,
      pipeCase: 'pipe stays elastic',
      pipeModulus: mpa('207000'),
      pipeStress: mpa('160'),
      pipePressure: mpa('0.90'),
    }))
    const { values, choices } = inputsOf(state)
    const lever = (273.1 / (2 * 160)) * (207_000 / 24_000)
    expect(answered(laminateOf(values, choices)).hoopMm).toBeCloseTo(lever * (1.35 - 0.9), 9)
  })

  test('pipe may yield: the least wall that was read is taken, and the marks without a number are named', () => {
    const state = foldProperties('MD-0041', (own) => ({
      ...own,
      pipeCase: 'pipe may yield',
      pipeModulus: mpa('207000'),
      pipeStress: mpa('20'),
      livePressure: mpa('0'),
    }))
    const { values, choices } = inputsOf(state)
    const leastWallMm = 6.0
    expect(values.wallLeft).toBe(leastWallMm)
    expect(designFigures(state).wallLeft.note).toBe('least of 19 readings, at D-6; no number at C-6 (TW)')
    expect(answered(laminateOf(values, choices)).hoopMm).toBeCloseTo(
      ((1.35 * 273.1) / 2 - 20 * leastWallMm) / (0.0018 * 24_000),
      9,
    )
  })

  test('the pipe alone is enough: thickness nought, and the fewest plies govern', () => {
    const state = foldProperties('MD-0041', (own) => ({
      ...own,
      pipeCase: 'pipe stays elastic',
      pipeModulus: mpa('207000'),
      pipeStress: mpa('160'),
      pipePressure: mpa('2.00'),
    }))
    const sheet = designSheet(state)
    expect(resultsOf(sheet, 'laminate')).toEqual(['t round = 0.00 mm', 't along = 0.00 mm'])
    expect(sheet.governing.text).toMatch(/^The fewest plies govern: 2 plies, 1\.24 mm/)
  })
})
