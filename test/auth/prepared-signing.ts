import { v7 } from 'uuid'
import type { StreamId } from '@/lib/domain/facts/fact'
import { ACCEPTANCE } from '@/test/commands/walk-to-closing'
import { NOW } from '@/test/commands/world'
import { type FactJson, factJson } from '@/test/store/facts-for-tests'
import type { Names } from './prepared-names'

/** A point of no curve: enough where a key is only named. */
export const PUBLIC_KEY = `B${'A'.repeat(86)}=`
const when = (time: string) => ({ observedAt: `2026-05-12T${time}:00+01:00`, enteredAt: `2026-05-12T${time}:00+01:00` })

/** A key of a person who holds no act of the table on a tablet, and a conflict that a sync noted. */
export function signing(names: Names): FactJson[] {
  return [
    factJson(
      'device:tab-2',
      'signing-key-taken',
      { algorithm: 'ECDSA P-256 SHA-256', publicKey: PUBLIC_KEY },
      { id: names.key, ...when('07:00'), observedBy: 'NEW', enteredBy: 'NEW' },
    ),
    factJson(
      'device:tab-2',
      'conflict-noted',
      { repair: 'repair:R-1' as StreamId, facts: [names.photo], remark: 'made without a network and not applied' },
      { id: names.conflict, ...when('08:40') },
    ),
  ]
}

/** A statement of a device's key over one fact, made with no key at all. */
export function signedBody(names: Names, meaning: 'measured' | 'released' | 'accepted', fact: string = names.record) {
  return {
    meaning,
    point: '05',
    attempt: 1,
    role: 'inspector',
    name: 'Person QI',
    party: 'inspector',
    covers: [{ fact, sha256: '0'.repeat(64) }],
    method: {
      kind: 'device',
      proof: { key: names.key, gate: 'PIN', offline: true, signature: `${'A'.repeat(86)}==` },
    },
  }
}

/** An entry of an outbox, made on that tablet. */
export function tabletEntry(command: string, input: object, id: string = v7()) {
  const stated = { observedAt: NOW, enteredAt: NOW, signer: 'QI', device: { id: 'tab-2', clockOffsetMs: null } }
  return { id, command, photos: [], madeOffline: true, input: { stream: 'repair:R-1', ...stated, ...input } }
}

/** A release with its signature, as a tablet sends it. */
export function tabletRelease(names: Names, heads: { stream: string; length: number }[]) {
  const id = v7()
  return tabletEntry(
    'release-on-device',
    {
      body: { point: '05', attempt: 1, party: 'inspector', scope: { kind: 'whole' }, heads },
      signature: { id: v7(), body: signedBody(names, 'released', id) },
    },
    id,
  )
}

/** An acceptance with its signature, as a tablet sends it. */
export function tabletAcceptance(names: Names, heads: { stream: string; length: number }[]) {
  const id = v7()
  const body = { ...ACCEPTANCE, heads }
  return tabletEntry('accept-on-device', { body, signature: { id: v7(), body: signedBody(names, 'accepted', id) } }, id)
}
