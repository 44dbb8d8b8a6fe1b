'use server'
import { checkTranscription } from '@/lib/server/commands/check-transcription'
import { chooseGoverns } from '@/lib/server/commands/choose-governs'
import { correctRecord } from '@/lib/server/commands/correct-record'
import { markNotApplicable } from '@/lib/server/commands/mark-not-applicable'
import { noteEvent } from '@/lib/server/commands/note-event'
import { openAttempt } from '@/lib/server/commands/open-attempt'
import { recordMaterialUsed } from '@/lib/server/commands/record-material-used'
import { recordPoint } from '@/lib/server/commands/record-point'
import { refuseRelease } from '@/lib/server/commands/refuse-release'
import { releasePoint } from '@/lib/server/commands/release-point'
import { signFacts } from '@/lib/server/commands/sign-facts'
import { submitPoint } from '@/lib/server/commands/submit-point'
import { withdrawRelease } from '@/lib/server/commands/withdraw-release'
import { act } from './act'

export async function recordPointAction(input: unknown) {
  return act(recordPoint, input)
}

export async function correctRecordAction(input: unknown) {
  return act(correctRecord, input)
}

export async function checkTranscriptionAction(input: unknown) {
  return act(checkTranscription, input)
}

export async function submitPointAction(input: unknown) {
  return act(submitPoint, input)
}

export async function releasePointAction(input: unknown) {
  return act(releasePoint, input)
}

export async function refuseReleaseAction(input: unknown) {
  return act(refuseRelease, input)
}

export async function withdrawReleaseAction(input: unknown) {
  return act(withdrawRelease, input)
}

export async function openAttemptAction(input: unknown) {
  return act(openAttempt, input)
}

export async function markNotApplicableAction(input: unknown) {
  return act(markNotApplicable, input)
}

export async function chooseGovernsAction(input: unknown) {
  return act(chooseGoverns, input)
}

export async function signFactsAction(input: unknown) {
  return act(signFacts, input)
}

export async function noteEventAction(input: unknown) {
  return act(noteEvent, input)
}

export async function recordMaterialUsedAction(input: unknown) {
  return act(recordMaterialUsed, input)
}
