import { describe, expect, test } from 'vitest'
import { FactId } from '@/lib/domain/facts/fact'
import { parseFact } from '@/lib/domain/facts/fact-kinds'
import { instantOf } from '@/lib/domain/time'
import { digestOfFact } from '@/lib/evidence/bytes-of-fact'
import { demoFacts } from '@/lib/server/demo/demo-facts'
import { DEMO_PEOPLE } from '@/lib/server/demo/demo-people'
import { DEMO_START } from '@/lib/server/demo/demo-time'

const { facts } = demoFacts()

describe('the facts of the demo', () => {
  test('every fact parses and comes back the same', () => {
    for (const { fact } of facts) expect(parseFact(JSON.parse(JSON.stringify(fact)))).toEqual({ ok: true, value: fact })
    expect(facts.length).toBeGreaterThan(700)
  })

  test('two runs give the same bytes', () => {
    expect(demoFacts().facts.map((one) => digestOfFact(one.fact))).toEqual(facts.map((one) => digestOfFact(one.fact)))
  })

  test('ids are UUIDv7 of the observed millisecond, and none is used twice', () => {
    expect(new Set(facts.map((one) => one.fact.id)).size).toBe(facts.length)
    for (const { fact } of facts) {
      expect(FactId.safeParse(fact.id).success).toBe(true)
      expect(fact.id[14]).toBe('7')
      expect(Number.parseInt(fact.id.slice(0, 13).replace('-', ''), 16)).toBe(instantOf(fact.observedAt))
    }
  })

  test('nothing is observed or received after the start of the demo, nor entered before it was observed', () => {
    for (const { fact, receivedAt } of facts) {
      expect(instantOf(receivedAt)).toBeLessThan(instantOf(DEMO_START))
      expect(instantOf(fact.enteredAt)).toBeGreaterThanOrEqual(instantOf(fact.observedAt))
      expect(instantOf(receivedAt)).toBeGreaterThanOrEqual(instantOf(fact.enteredAt))
    }
  })

  test('facts stand in the order of receipt', () => {
    const times = facts.map((one) => instantOf(one.receivedAt))
    expect(times).toEqual([...times].sort((a, b) => a - b))
  })

  test('a decision names the head that its stream had when it was received', () => {
    const lengths = new Map<string, number>()
    for (const { fact } of facts) {
      if ('heads' in fact.body)
        for (const head of fact.body.heads) expect(lengths.get(head.stream) ?? 0).toBe(head.length)
      lengths.set(fact.stream, (lengths.get(fact.stream) ?? 0) + 1)
    }
  })

  test('every signature covers the exact digests of facts that were received before it', () => {
    const digests = new Map<string, string>()
    let covered = 0
    for (const { fact } of facts) {
      if (fact.kind === 'signed') {
        for (const one of fact.body.covers) expect(digests.get(one.fact)).toBe(one.sha256)
        covered += fact.body.covers.length
        expect(fact.body.covers.length).toBeGreaterThan(0)
      }
      digests.set(fact.id, digestOfFact(fact))
    }
    expect(covered).toBeGreaterThan(200)
  })

  test('everyone who observed, entered or signed is registered; nobody releases a crew or inspector hold that he signed as performed', () => {
    const known = new Set(DEMO_PEOPLE.map((one) => one.id))
    const performed = new Set<string>()
    for (const { fact } of facts) {
      expect(known.has(fact.observedBy) && known.has(fact.enteredBy)).toBe(true)
      if (fact.kind === 'signed' && fact.body.meaning === 'performed')
        performed.add(`${fact.stream} ${fact.body.point} ${fact.body.attempt} ${fact.observedBy}`)
      if (fact.kind === 'released')
        expect(performed.has(`${fact.stream} ${fact.body.point} ${fact.body.attempt} ${fact.observedBy}`)).toBe(false)
    }
  })

  test('the client’s representative has notice of at least 26 h, and attends all but the test of MD-0042', () => {
    const answers = new Map(
      facts.flatMap(({ fact }) => (fact.kind === 'notice-answered' ? [[fact.body.notice, fact.body]] : [])),
    )
    const notices = facts.flatMap(({ fact }) => (fact.kind === 'notice-sent' ? [fact] : []))
    expect(notices.length).toBeGreaterThan(25)
    for (const { id, stream, body } of notices) {
      expect(instantOf(body.for) - instantOf(body.sentAt)).toBeGreaterThanOrEqual(26 * 3_600_000)
      const isTest = stream === 'repair:MD-0042' && body.point === '18'
      expect(answers.get(id)?.outcome).toBe(isTest ? 'not attended, proceeded' : 'attended')
    }
  })
})
