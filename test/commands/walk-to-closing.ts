import type { StreamId } from '@/lib/domain/facts/fact'
import { openDesk } from '@/lib/server/commands/open-desk'
import { recordPoint } from '@/lib/server/commands/record-point'
import { releasePoint } from '@/lib/server/commands/release-point'
import { submitPoint } from '@/lib/server/commands/submit-point'
import { PASSWORD, type World } from './world'
import { DRAWING, PERMIT } from './world-facts'

const years = { digits: 10, scale: 0 }
export const ACCEPTANCE = {
  kind: 'accepted',
  lifeYears: years,
  lifeFrom: '2026-05-12',
  nextInspectionOn: '2027-05-12',
  restrictions: ['no welding on the wrap'],
  conditions: [],
}
export const CHECKLIST = {
  type: 'checklist',
  lines: [{ text: 'every point released', answer: 'yes' }],
  labelFixed: 'yes',
  lifeYears: { kind: 'number', ...years, unit: 'yr', text: '10' },
  nextInspectionOn: '2027-05-12',
}

type Answer = { ok: boolean }

/** What is done at the desk of R-1, in the clock of the test; a step that is refused throws. */
export function deskOf(world: World, stream: StreamId) {
  const heads = async () => (await openDesk(await world.of('QI'))).headsOf([stream])
  const must = (answer: Answer) => {
    if (!answer.ok) throw new Error(JSON.stringify(answer))
  }
  const record = async (person: string, point: string, one: object) =>
    must(await recordPoint(await world.of(person), { stream, body: { point, attempt: 1, record: one } }))
  const submit = async (point: string) =>
    must(await submitPoint(await world.of('QI'), { stream, body: { point, attempt: 1, heads: await heads() } }))
  const release = async (point: string, party: string, signer: object) => {
    const body = { point, attempt: 1, party, scope: { kind: 'whole' }, heads: await heads() }
    must(await releasePoint(await world.of('QI'), { stream, body, signer }))
  }
  const by = (person: string) => ({ by: 'password', person, password: PASSWORD })
  return {
    heads,
    /** Every point released, the closing checklist recorded and submitted. */
    async walkToClosing(): Promise<void> {
      await record('L1', '05', PERMIT)
      await submit('05')
      await release('05', 'crew', by('L1'))
      await release('05', 'inspector', by('QI'))
      await record('QI', '06', { type: 'remark', text: 'clean and dry' })
      await submit('06')
      await release('06', 'inspector', by('QI'))
      await release('06', 'client', { by: 'in person', person: 'KP', witnessPassword: PASSWORD, drawing: DRAWING })
      await record('QI', '19', CHECKLIST)
      await submit('19')
    },
  }
}
