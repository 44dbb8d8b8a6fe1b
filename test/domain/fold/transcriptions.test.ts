import { describe, expect, test } from 'vitest'
import { mayCheckTranscription } from '@/lib/domain/fold/transcription-states'
import { waitingLines } from '@/lib/domain/waiting/waiting-lines'
import { climateFromPaper, PAPER, SCAN } from './climate-from-paper'
import { person } from './fact-maker'
import { ask } from './release-asked'
import { type SmallJob, smallJob } from './small-job'
import { m, REPAIR } from './small-job-plan'
import { cleanliness, climate, permit } from './small-job-records'
import { attemptOf, fold } from './small-job-state'

const LACKS = 'Climate: transcribed, not yet checked by a second person.'

/** Point 07 as transcribed and submitted, behind a permit that the lead recorded. */
function transcribed(job: SmallJob) {
  job.record('02', 1, '05-12 07:20', permit(), { by: 'maren' })
  const { record } = climateFromPaper(job)
  job.submit('07', '05-12 12:10')
  return record
}

function check(job: SmallJob, when: string, by: string, record: string, more: object = {}) {
  return job.make(
    REPAIR,
    'transcription-checked',
    when,
    { point: '07', attempt: 1, record, corrections: [], result: 'agrees', ...more },
    { by },
  )
}

const missingAt = (job: SmallJob, when: string) => attemptOf(fold(job.facts, when), '07').missing
const stateAt = (job: SmallJob, when: string) => attemptOf(fold(job.facts, when), '07').records[0]?.transcription

describe('a record transcribed from paper', () => {
  test('lacks its check for release until a second person found that it agrees', () => {
    const job = smallJob()
    const record = transcribed(job)
    expect(missingAt(job, '05-12 12:20')).toEqual([LACKS])
    expect(fold(job.facts, '05-12 12:20').missing).toContainEqual({ point: '07', text: LACKS })
    check(job, '05-12 12:30', 'tobias', record.id)
    expect(missingAt(job, '05-12 12:40')).toEqual([])
    expect(stateAt(job, '05-12 12:40')).toMatchObject({ state: 'agrees', scan: { body: { photo: { sha256: SCAN } } } })
    // as of a moment before the check it is still lacking
    expect(missingAt(job, '05-12 12:20')).toEqual([LACKS])
  })

  test('a check by who entered it is none, whatever was said at entry', () => {
    const job = smallJob()
    const record = transcribed(job)
    check(job, '05-12 12:30', 'maren', record.id)
    expect(missingAt(job, '05-12 12:40')).toEqual([LACKS])
    const said = smallJob()
    said.make(REPAIR, 'recorded', '05-12 09:22', {
      point: '07',
      attempt: 1,
      record: climate('05-12 09:22'),
      transcribed: { keeper: 'crew office', place: 'file 3', checkedBy: 'edda' },
    })
    expect(missingAt(said, '05-12 12:40')).toContain(LACKS)
  })

  test('what differs is to be corrected; the correction voids every check before it, and a new check sees it', () => {
    const job = smallJob()
    const record = transcribed(job)
    check(job, '05-12 12:30', 'tobias', record.id, { result: 'differs', remark: 'air reads 19 on the sheet' })
    expect(missingAt(job, '05-12 12:40')).toEqual([
      'Climate: the transcription differs from the paper, to be corrected: air reads 19 on the sheet.',
    ])
    const correction = job.make(
      REPAIR,
      'corrected',
      '05-12 12:45',
      {
        target: record.id,
        changes: [{ path: ['air'], from: climate('05-12 09:22').air, to: m('19', 'degC') }],
        reason: 'misread the sheet',
      },
      { by: 'maren' },
    )
    const anew = 'Climate: transcribed, corrected after its check, to be checked anew by a second person.'
    expect(missingAt(job, '05-12 12:50')).toContain(anew)
    // a check that did not see the correction does not count, though it was made after it
    check(job, '05-12 12:55', 'tobias', record.id)
    expect(missingAt(job, '05-12 12:56')).toContain(anew)
    check(job, '05-12 13:00', 'tobias', record.id, { corrections: [correction.id] })
    expect(missingAt(job, '05-12 13:01').join()).not.toContain('Climate')
  })

  test('order and repetition of facts do not matter', () => {
    const job = smallJob()
    check(job, '05-12 12:30', 'tobias', transcribed(job).id)
    const turned = [...job.facts].reverse().concat(job.facts)
    expect(attemptOf(fold(turned, '05-12 13:00'), '07').records).toEqual(
      attemptOf(fold(job.facts, '05-12 13:00'), '07').records,
    )
  })

  test('the point is released only after the check', () => {
    const job = smallJob()
    job.record('02', 1, '05-12 07:20', permit(), { by: 'maren' })
    job.submit('02', '05-12 07:21')
    job.release('02', '05-12 07:22', 'crew')
    const record = job.make(
      REPAIR,
      'recorded',
      '05-12 09:04',
      {
        point: '05',
        attempt: 1,
        record: cleanliness(),
        transcribed: PAPER,
      },
      { by: 'edda', enteredBy: 'maren', enteredAt: '05-12 09:10' },
    )
    job.submit('05', '05-12 09:11')
    job.sign('05', '05-12 09:12', [record.id], 'measured', 'inspector')
    expect(ask(job, '05-12 09:13', '05')).toMatchObject({
      error: {
        code: 'incomplete',
        missing: ['Cleanliness: transcribed, not yet checked by a second person.'],
      },
    })
    check(job, '05-12 09:14', 'tobias', record.id, { point: '05' })
    expect(ask(job, '05-12 09:15', '05')).toEqual({ ok: true, value: true })
  })

  test('the scan is no photo: it answers no demand, carries no flag and stands apart', () => {
    const job = smallJob()
    transcribed(job)
    const attempt = attemptOf(fold(job.facts, '05-12 12:20'), '07')
    expect(attempt.photos).toEqual([])
    expect(attempt.scans.map((one) => one.body.scan?.sheet)).toEqual(['MD-0099/07/1/260512-080000'])
  })

  test('waits for a second person to check, and for who entered it when it differs', () => {
    const job = smallJob()
    const record = transcribed(job)
    const lines = (when: string, who: string) =>
      waitingLines(fold(job.facts, when), ['inspector'], person(who)).filter((one) => one.kind === 'check')
    expect(lines('05-12 12:20', 'tobias')).toMatchObject([
      { href: `/repairs/MD-0099/points/07/check/${record.id}`, detail: 'transcribed, not yet checked' },
    ])
    expect(lines('05-12 12:20', 'maren')).toEqual([])
    expect(
      waitingLines(fold(job.facts, '05-12 12:20'), ['client'], person('ludmila')).filter((one) => one.kind === 'check'),
    ).toEqual([])
    check(job, '05-12 12:30', 'tobias', record.id, { result: 'differs', remark: 'air reads 19' })
    expect(lines('05-12 12:40', 'tobias')).toEqual([])
    expect(lines('05-12 12:40', 'maren')).toMatchObject([
      { href: `/repairs/MD-0099/points/07/correct/${record.id}`, detail: 'air reads 19' },
    ])
  })

  test('who entered or corrected it may not check it, nor anyone who did not see it as it stands', () => {
    const job = smallJob()
    transcribed(job)
    const copy = attemptOf(fold(job.facts, '05-12 12:20'), '07').records[0]
    const plain = attemptOf(fold(job.facts, '05-12 12:20'), '02').records[0]
    if (!copy || !plain) throw new Error('no record')
    expect(mayCheckTranscription(copy, [], person('tobias'))).toEqual({ ok: true, value: true })
    expect(mayCheckTranscription(copy, [], person('maren'))).toMatchObject({ error: { code: 'own-transcription' } })
    expect(mayCheckTranscription(copy, [plain.fact.id], person('tobias'))).toMatchObject({
      error: { code: 'corrections-moved' },
    })
    expect(mayCheckTranscription(plain, [], person('tobias'))).toMatchObject({ error: { code: 'not-transcribed' } })
  })
})
