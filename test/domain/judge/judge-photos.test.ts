import { expect, it } from 'vitest'
import type { PhotoFlag, PhotoState } from '@/lib/domain/fold/repair-state'
import { judgeCriterion } from '@/lib/domain/judge/judge-criterion'
import { contextOf, criterion, fact, point, stream } from './judge-fixtures'

type Decision = 'same picture, wrongly used' | 'same picture, rightly used'
const photo = (no: number, kind: PhotoFlag['kind'], other: number, decision: Decision | null) =>
  ({
    fact: { id: fact(no), body: { demand: 'band' } },
    judged: null,
    flags: [
      {
        kind,
        other: { repair: stream('repair:MD-1'), fact: fact(other), point: point('05') },
        decision: decision && { body: { decision } },
      },
    ],
  }) as unknown as PhotoState

it.each([
  ['a later copy, undecided', photo(2, 'exact copy', 1, null), 'pass'],
  ['a later copy, wrongly used', photo(2, 'exact copy', 1, 'same picture, wrongly used'), 'not proven'],
  ['a later near copy, wrongly used', photo(2, 'near copy', 1, 'same picture, wrongly used'), 'not proven'],
  ['a later copy, decided for', photo(2, 'exact copy', 1, 'same picture, rightly used'), 'pass'],
  ['the first of two, wrongly used later', photo(1, 'exact copy', 2, 'same picture, wrongly used'), 'pass'],
] as const)('%s', (_case, one, verdict) => {
  const criteria = [criterion({ kind: 'photos' }, '05')]
  const base = contextOf(criteria, [])
  const demand = { id: 'band', show: 'prepared band', atLeast: 1 }
  const context = { ...base, point: { ...base.point, photos: [demand] }, photos: [one] }
  const result = criteria.map((each) => judgeCriterion(each, context))
  expect(result.map((each) => each.verdict)).toEqual([verdict])
})

it.each([
  ['none on the device', [], 'not proven'],
  ['one of another demand', ['length'], 'not proven'],
  ['one on the device, not in the record yet', ['band'], 'pass'],
] as const)('%s', (_case, photosToCome, verdict) => {
  const criteria = [criterion({ kind: 'photos' }, '05')]
  const base = contextOf(criteria, [])
  const demand = { id: 'band', show: 'prepared band', atLeast: 1 }
  const context = { ...base, point: { ...base.point, photos: [demand] }, photos: [], photosToCome }
  expect(criteria.map((each) => judgeCriterion(each, context).verdict)).toEqual([verdict])
})
