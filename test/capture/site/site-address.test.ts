import { expect, test } from 'vitest'
import { SITE_START, siteHref, siteHrefFor, sitePlaceOf } from '@/lib/capture/site/site-address'

const HOST = 'https://record.example'

test.each([
  ['/repairs/MD-0042', '/site#repair=MD-0042'],
  ['/repairs/MD-0042/', '/site#repair=MD-0042'],
  ['/repairs/MD-0042/points/16', '/site#repair=MD-0042&point=16'],
  ['/repairs/MD-0042/points/16?attempt=2', '/site#repair=MD-0042&point=16&attempt=2'],
  ['/repairs/MD-0042/points/16/record/hardness?attempt=1', '/site#repair=MD-0042&point=16&attempt=1&form=hardness'],
  ['/repairs/A%2FB/points/05', '/site#repair=A%2FB&point=05'],
  ['/repairs/%E0%A4%A', '/site#repair=%25E0%25A4%25A'],
  ['/repairs/MD-0042/dossier', '/site'],
  ['/repairs/new', '/site'],
  ['/repairs', '/site'],
  ['/waiting', '/site'],
  ['/', '/site'],
])('without a network %s opens as %s', (page, site) => {
  expect(siteHrefFor(new URL(page, HOST))).toBe(site)
})

test('an address and its place say the same', () => {
  const place = {
    repair: 'MD/0042 b',
    point: '16',
    attempt: 2,
    form: 'hardness',
    correct: null,
    again: 'x',
    show: 'outbox' as const,
    open: 'QDM-SHAFT-2',
    paper: null,
  }
  expect(sitePlaceOf(new URL(siteHref(place), HOST).hash)).toEqual(place)
  expect(siteHref({})).toBe('/site')
})

test.each(['0', '-1', '1.5', 'x', ''])('an attempt %j is none', (attempt) => {
  expect(sitePlaceOf(`#${new URLSearchParams({ repair: 'R', attempt })}`)?.attempt).toBeNull()
})

test('the page without a place is the list; an element of the page is no place', () => {
  expect(sitePlaceOf('')).toEqual(SITE_START)
  expect(sitePlaceOf('#main')).toBeNull()
})
