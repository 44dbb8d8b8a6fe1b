import type { StreamKind } from '@/lib/domain/facts/fact'
import { BODIES, type Fact, type FactKind } from '@/lib/domain/facts/fact-kinds'
import { RECORD_TITLES } from '@/lib/domain/records/record-titles'

/** Kinds whose name alone does not say what was done. */
const KIND_WORDS: Partial<Record<FactKind, string>> = {
  recorded: 'record keyed',
  corrected: 'own entry corrected',
  signed: 'signature',
  waived: 'hold waived',
  accepted: 'repair accepted',
  disposed: 'bytes disposed of',
  contained: 'nonconformance contained',
  assessed: 'nonconformance assessed',
  verified: 'nonconformance verified',
  closed: 'nonconformance closed',
  reopened: 'nonconformance reopened',
  submitted: 'point submitted',
  released: 'point released',
  remark: 'remark on the project',
  transmitted: 'dossier sent',
  'found-wrong': 'instrument found wrong',
  'maker-letter': 'maker’s letter on life',
  'check-made': 'instrument checked',
  'transcription-checked': 'transcription compared with its paper',
  'stands-or-redo': 'decided after a revision: stands or redo',
}

/** A kind of fact in words. */
export function kindWords(kind: string): string {
  return KIND_WORDS[kind as FactKind] ?? kind.replaceAll('-', ' ')
}

/** Every kind of fact by the kind of stream it stands in, for a choice. A kind of two streams is listed once. */
export function kindsByStream(): { stream: StreamKind; kinds: FactKind[] }[] {
  const seen = new Set<string>()
  return Object.entries(BODIES).flatMap(([stream, bodies]) => {
    const kinds = Object.keys(bodies).filter((kind) => !seen.has(kind)) as FactKind[]
    for (const kind of kinds) seen.add(kind)
    return kinds.length > 0 ? [{ stream: stream as StreamKind, kinds }] : []
  })
}

/** What a fact says, in few words. */
export function factWords(fact: Fact): string {
  switch (fact.kind) {
    case 'recorded':
      return `recorded${fact.body.transcribed ? ' from paper' : ''}: ${(RECORD_TITLES[fact.body.record.type] ?? fact.body.record.type).toLowerCase()}`
    case 'transcription-checked':
      return `transcription compared with its paper: ${fact.body.result}`
    case 'signed':
      return `signed: ${fact.body.meaning}, ${fact.body.name}`
    case 'released':
      return `released for ${fact.body.party}`
    case 'photo-attached':
      return fact.body.scan ? `scan: ${fact.body.caption}` : `photo: ${fact.body.caption}`
    case 'corrected':
      return `corrected: ${fact.body.reason}`
    case 'role-granted':
      return `role granted: ${fact.body.role}`
    case 'dossier-issued':
      return `dossier issued, rev ${fact.body.revision}`
    default:
      return kindWords(fact.kind)
  }
}

/** Where a fact stands: its stream, and point and attempt where it has them. */
export function factPlace(fact: Fact): string {
  const at =
    'point' in fact.body && fact.body.point
      ? `point ${fact.body.point}${'attempt' in fact.body && fact.body.attempt ? ` attempt ${fact.body.attempt}` : ''}`
      : ''
  return [fact.stream.replace(':', ' '), at].filter((part) => part !== '').join(', ')
}

/** A clock error in words: `1 min 4 s fast`, `right` within half a second, `not known`. */
export function clockWords(offsetMs: number | null): string {
  if (offsetMs === null) return 'not known'
  if (Math.abs(offsetMs) < 500) return 'right'
  const seconds = Math.round(Math.abs(offsetMs) / 1000)
  const minutes = Math.floor(seconds / 60)
  return `${minutes > 0 ? `${minutes} min ` : ''}${seconds % 60} s ${offsetMs > 0 ? 'fast' : 'slow'}`
}
