import { expect, test } from 'vitest'
import { foundBeside } from '@/lib/domain/judge/show-finding'
import { criterionOf, foldDemo } from '@/test/demo/folded-demo'

test('what was found is said once: left out where a finding begins with it, kept where none does', () => {
  const none = criterionOf(foldDemo('MD-0043'), '16.each')
  expect([none.found, foundBeside(none)]).toEqual(['no readings', null])
  const failed = criterionOf(foldDemo('MD-0042'), '16.mean')
  expect(failed.verdict).toBe('fail')
  expect(foundBeside(failed)).toBe(failed.found)
})
