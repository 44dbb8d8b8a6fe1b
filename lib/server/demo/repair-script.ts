import type { FactOf } from '@/lib/domain/facts/fact-kinds'
import type { Meaning, Party } from '@/lib/domain/roles'
import type { Moment } from '@/lib/domain/time'
import { digestOfFact } from '@/lib/evidence/bytes-of-fact'
import { demoPerson } from './demo-people'
import { secondsAfter } from './demo-time'
import type { BodyInput, FactScript, Line } from './fact-script'
import type { PhotoBook, Scene } from './photo-drawing'

type Record = BodyInput<'recorded'>['record']
type Scope = BodyInput<'released'>['scope']
type Method = BodyInput<'signed'>['method']
type Covered = FactOf<'recorded' | 'corrected' | 'photo-attached' | 'transcription-checked'>
type How = Partial<Pick<Line<'recorded'>, 'enteredAt' | 'enteredBy' | 'late' | 'device' | 'receivedAt'>> & {
  attempt?: number
}

/** Signing and releasing a point: who signs what, who releases for which party, and whether the client's representative signs as witness. */
export type Closing = {
  attempt?: number
  signs: [person: string, meaning: Meaning][]
  releases: [party: Party, person: string][]
  scope?: Scope
  submittedBy: string
}

const WHOLE: Scope = { kind: 'whole' }
const STEP_SECONDS = 8

/** The hand that writes one repair's facts: each act in the order of its receipt. Signatures cover the exact digests of what stands at the point. */
export function scriptRepair(script: FactScript, number: string, photos: PhotoBook) {
  const stream = `repair:${number}`
  const standing = new Map<string, Covered[]>()
  const place = (point: string, attempt = 1) => `${point}/${attempt}`
  const keep = (key: string, fact: Covered) => standing.set(key, [...(standing.get(key) ?? []), fact])
  const unanswered: FactOf<'notice-sent'>[] = []
  const heads = () => [{ stream, length: script.lengthOf(stream) }]

  const hand = {
    stream,
    heads,
    /** What stands at a point's attempt so far: records, corrections and photos. */
    at: (point: string, attempt = 1) => standing.get(place(point, attempt)) ?? [],
    record(
      point: string,
      at: Moment,
      by: string,
      record: Record,
      { attempt = 1, ...how }: How = {},
      transcribed?: BodyInput<'recorded'>['transcribed'],
    ) {
      const fact = script.write({
        stream,
        kind: 'recorded',
        at,
        by,
        ...how,
        body: { point, attempt, record, ...(transcribed ? { transcribed } : {}) },
      })
      keep(place(point, attempt), fact)
      return fact
    },
    /** A second person compares what was copied from paper with the paper. */
    checkPaper(at: Moment, by: string, copy: FactOf<'recorded'>) {
      const { point, attempt } = copy.body
      const fact = script.write({
        stream,
        kind: 'transcription-checked',
        at,
        by,
        body: { point, attempt, record: copy.id, corrections: [], result: 'agrees' },
      })
      keep(place(point, attempt), fact)
      return fact
    },
    correct(
      at: Moment,
      by: string,
      target: FactOf<'recorded'>,
      changes: BodyInput<'corrected'>['changes'],
      reason: string,
    ) {
      const fact = script.write({ stream, kind: 'corrected', at, by, body: { target: target.id, changes, reason } })
      keep(place(target.body.point, target.body.attempt), fact)
      return fact
    },
    photo(
      point: string,
      at: Moment,
      by: string,
      demand: string | null,
      caption: string,
      scene: Scene,
      { attempt = 1, ...how }: How = {},
      of?: { key: string; repair: string; point: string; takenAt: Moment },
    ) {
      const nth = (standing.get(place(point, attempt)) ?? []).filter((one) => one.kind === 'photo-attached').length + 1
      const drawing = of ?? { key: `${number}/${point}/${attempt}/${nth}`, repair: number, point, takenAt: at }
      const fact = script.write({
        stream,
        kind: 'photo-attached',
        at,
        by,
        ...how,
        body: { point, attempt, photo: photos({ ...drawing, scene }), caption, ...(demand ? { demand } : {}) },
      })
      keep(place(point, attempt), fact)
      return fact
    },
    sign(
      point: string,
      at: Moment,
      person: string,
      meaning: Meaning,
      { attempt = 1, method = { kind: 'password' } as Method, covers = standing.get(place(point, attempt)) ?? [] } = {},
    ) {
      const { role, name, party } = demoPerson(person)
      return script.write({
        stream,
        kind: 'signed',
        at,
        by: person,
        body: {
          meaning,
          point,
          attempt,
          role,
          name,
          party,
          method,
          covers: covers.map((fact) => ({ fact: fact.id, sha256: digestOfFact(fact) })),
        },
      })
    },
    submit(point: string, at: Moment, by: string, attempt = 1) {
      return script.write({ stream, kind: 'submitted', at, by, body: { point, attempt, heads: heads() } })
    },
    release(point: string, at: Moment, party: Party, by: string, scope: Scope = WHOLE, attempt = 1) {
      return script.write({ stream, kind: 'released', at, by, body: { point, attempt, party, scope, heads: heads() } })
    },
    /** Notice to the client's representative of a point, for when it is due. */
    notice(point: string, sentAt: Moment, by: string, to: string, due: Moment) {
      unanswered.push(
        script.write({
          stream,
          kind: 'notice-sent',
          at: sentAt,
          by,
          body: { point, to, party: 'client', how: 'e-mail', sentAt, for: due },
        }),
      )
    },
    /** Answer the first open notice of a point; nothing when there is none. */
    answer(point: string, at: Moment, by: string, outcome: Omit<BodyInput<'notice-answered'>, 'notice'>) {
      const place = unanswered.findIndex((one) => one.body.point === point)
      const [notice] = place < 0 ? [] : unanswered.splice(place, 1)
      if (notice) script.write({ stream, kind: 'notice-answered', at, by, body: { notice: notice.id, ...outcome } })
    },
    /** Sign in turn, submit, release in turn, some seconds apart; gives the releases. */
    close(
      point: string,
      at: Moment,
      { attempt = 1, signs, releases, scope = WHOLE, submittedBy }: Closing,
    ): FactOf<'released'>[] {
      let step = 0
      const next = () => {
        step += 1
        return secondsAfter(at, step * STEP_SECONDS)
      }
      if (signs.some(([person]) => demoPerson(person).role === 'client'))
        hand.answer(point, at, submittedBy, { outcome: 'attended' })
      for (const [person, meaning] of signs) hand.sign(point, next(), person, meaning, { attempt })
      hand.submit(point, next(), submittedBy, attempt)
      return releases.map(([party, person]) => hand.release(point, next(), party, person, scope, attempt))
    },
    write<
      K extends
        | Line<'recorded'>['kind']
        | 'event-noted'
        | 'release-withdrawn'
        | 'release-refused'
        | 'attempt-opened'
        | 'repair-held'
        | 'repair-opened'
        | 'accepted'
        | 'notice-sent'
        | 'notice-answered'
        | 'material-used'
        | 'impact-decided',
    >(kind: K, at: Moment, by: string, body: BodyInput<K>, how: Omit<How, 'attempt'> = {}): FactOf<K> {
      return script.write({ stream, kind, at, by, ...how, body })
    },
  }
  return hand
}

export type RepairHand = ReturnType<typeof scriptRepair>
