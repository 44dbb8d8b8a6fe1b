import { RECORD_TITLES } from '../records/record-titles'
import type { Fact, FactKind } from './fact-kinds'

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
