import { v7 } from 'uuid'
import { beforeAll, describe, expect, test } from 'vitest'
import { makeDeviceKey } from '@/lib/capture/signing/device-key'
import { signHere } from '@/lib/capture/signing/sign-on-device'
import { factsOfEntry } from '@/lib/capture/site/local-facts'
import { FactId, PersonId } from '@/lib/domain/facts/fact'
import { type Fact, parseFact } from '@/lib/domain/facts/fact-kinds'
import { ofKind } from '@/lib/domain/fold/order-facts'
import { contentsByHand } from './dossier-by-hand'
import { type Holder, holderByHand, receivedByHand } from './holder-by-hand'
import { logByHand, type Received } from './log-by-hand'
import { check, codesOf, signedFile } from './signed-by-hand'

const stream = 'repair:MD-0043'
const device = { id: 'tab-of-test', clockOffsetMs: null }
const person = PersonId.parse('tobias.wrenfield')

/** A dossier whose repair has one signature made with a device's key; `change` falsifies it before the holder logs it. */
async function answerTo(holder: Holder, change: (facts: Fact[]) => Fact[]) {
  const received = receivedByHand(holder)
  const recorded = received.map((one) => one.fact).find((fact) => fact.stream === stream && fact.kind === 'recorded')
  if (recorded?.kind !== 'recorded') throw new Error('the demonstration has no record')
  const at = '2026-05-28T17:00:00+01:00'
  const key = await makeDeviceKey()
  const id = FactId.parse(v7())
  const envelope = {
    v: 1,
    id,
    stream: `device:${device.id}`,
    observedAt: at,
    observedBy: recorded.observedBy,
    enteredAt: at,
    enteredBy: recorded.observedBy,
    device,
  }
  const taken = parseFact({
    ...envelope,
    kind: 'signing-key-taken',
    body: { algorithm: 'ECDSA P-256 SHA-256', publicKey: key.publicKey },
  })
  if (!taken.ok) throw new Error(JSON.stringify(taken.error))
  const made = await signHere(
    {
      tenant: 't',
      person: recorded.observedBy,
      name: 'A signer',
      fact: id,
      privateKey: key.privateKey,
      pin: { salt: '', iterations: 1, hash: '' },
      triesLeft: 5,
    },
    { by: 'key' },
    {
      stream,
      point: recorded.body.point,
      attempt: recorded.body.attempt,
      covers: [{ fact: recorded.id, sha256: '0'.repeat(64) }],
      photos: [],
      at,
      device,
      isOffline: true,
    },
    { id: v7(), meaning: 'measured', role: 'inspector' },
  )
  const signed = factsOfEntry({
    id: made.id,
    command: made.command,
    person: recorded.observedBy,
    input: { ...made.input, device },
  } as never)
  const added = change([taken.value, ...signed]).map((fact): Received => ({ fact, receivedAt: at, receivedBy: person }))
  const log = logByHand([...received, ...added], holder.origin)
  return check(await signedFile(contentsByHand(log, holder, 'MD-0043'), holder.identity))
}

describe('signatures by keys of devices in a dossier', () => {
  let holder: Holder
  beforeAll(async () => {
    holder = await holderByHand(7)
  })

  test('one that the key made is proved, and what it cannot show is said', async () => {
    const answer = await answerTo(holder, (facts) => facts)
    expect(codesOf(answer)).toEqual([])
    expect(answer.proved.map((one) => one.code)).toContain('device-signatures')
    expect(answer.notProved.map((one) => one.code)).toContain('device-hands')
  })

  test('one that was changed by the holder of the log, or whose key is not there, is a break', async () => {
    const redated = await answerTo(holder, (facts) =>
      facts.map((fact) => (fact.kind === 'signed' ? { ...fact, observedAt: '2026-05-28T16:00:00+01:00' } : fact)),
    )
    expect(codesOf(redated)).toEqual(['device-signature-false'])
    const ofAnother = await answerTo(holder, (facts) =>
      facts.map((fact) =>
        fact.kind === 'signing-key-taken' ? { ...fact, observedBy: person, enteredBy: person } : fact,
      ),
    )
    expect(codesOf(ofAnother)).toEqual(['device-signature-false'])
    const keyless = await answerTo(holder, (facts) => ofKind(facts, 'signed'))
    expect(codesOf(keyless)).toEqual(['device-key-missing'])
  })
})
