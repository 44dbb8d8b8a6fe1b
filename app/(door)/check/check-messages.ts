import type { Answer } from '@/lib/verify/answer'
import type { Given, GivenRefusal } from '@/lib/verify/trusted'

/** What the page asks of its worker: check this file by what the reader trusts. */
export type CheckOrder = { file: File; given: Given }

/** What the worker tells. `ready` once it can work without a network. */
export type CheckNews =
  | { kind: 'ready' }
  | { kind: 'progress'; doneBytes: number; sizeBytes: number }
  | { kind: 'answer'; answer: Answer }
  | { kind: 'given-refused'; code: GivenRefusal['code'] }
  | { kind: 'failed'; text: string }
