import type { DeviceProof } from '../facts/device-proof'
import type { PersonId } from '../facts/fact'
import type { BodyOf } from '../facts/fact-kinds'

/** How the signer of a signature was known, that a device's key stood in for a password, and that there was no network where there was none. */
export function methodWords(method: BodyOf<'signed'>['method'], nameOf: (person: PersonId) => string): string {
  switch (method.kind) {
    case 'password':
      return 'password'
    case 'device':
      return proofWords(method.proof)
    case 'in person':
      return [
        `in person, seen by ${nameOf(method.witness)}`,
        method.proof ? `by ${proofWords(method.proof)}` : 'by password',
        ...(method.drawing ? [`drawn, digest ${method.drawing.slice(0, 8)}…`] : []),
      ].join('; ')
    case 'in writing':
      return `in writing: ${method.reference}`
  }
}

function proofWords(proof: DeviceProof): string {
  return `key of this device behind a PIN${proof.offline ? ', without a network' : ''}`
}
