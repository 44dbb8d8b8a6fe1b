'use server'
import { agreeDoesNotBlock } from '@/lib/server/commands/agree-does-not-block'
import { approveDisposition } from '@/lib/server/commands/approve-disposition'
import { assessNonconformance } from '@/lib/server/commands/assess-nonconformance'
import { closeNonconformance } from '@/lib/server/commands/close-nonconformance'
import { containNonconformance } from '@/lib/server/commands/contain-nonconformance'
import { finishAction } from '@/lib/server/commands/finish-action'
import { finishCorrectiveAction } from '@/lib/server/commands/finish-corrective-action'
import { nameCorrectiveAction } from '@/lib/server/commands/name-corrective-action'
import { proposeDisposition } from '@/lib/server/commands/propose-disposition'
import { raiseNonconformance } from '@/lib/server/commands/raise-nonconformance'
import { rejectDisposition } from '@/lib/server/commands/reject-disposition'
import { rejectNonconformance } from '@/lib/server/commands/reject-nonconformance'
import { reopenNonconformance } from '@/lib/server/commands/reopen-nonconformance'
import { startAction } from '@/lib/server/commands/start-action'
import { verifyNonconformance } from '@/lib/server/commands/verify-nonconformance'
import { voidDuplicate } from '@/lib/server/commands/void-duplicate'
import { act } from './act'

export async function raiseNonconformanceAction(input: unknown) {
  return act(raiseNonconformance, input)
}

export async function containNonconformanceAction(input: unknown) {
  return act(containNonconformance, input)
}

export async function assessNonconformanceAction(input: unknown) {
  return act(assessNonconformance, input)
}

export async function proposeDispositionAction(input: unknown) {
  return act(proposeDisposition, input)
}

export async function approveDispositionAction(input: unknown) {
  return act(approveDisposition, input)
}

export async function rejectDispositionAction(input: unknown) {
  return act(rejectDisposition, input)
}

export async function startActionAction(input: unknown) {
  return act(startAction, input)
}

export async function finishActionAction(input: unknown) {
  return act(finishAction, input)
}

export async function verifyNonconformanceAction(input: unknown) {
  return act(verifyNonconformance, input)
}

export async function closeNonconformanceAction(input: unknown) {
  return act(closeNonconformance, input)
}

export async function reopenNonconformanceAction(input: unknown) {
  return act(reopenNonconformance, input)
}

export async function rejectNonconformanceAction(input: unknown) {
  return act(rejectNonconformance, input)
}

export async function voidDuplicateAction(input: unknown) {
  return act(voidDuplicate, input)
}

export async function agreeDoesNotBlockAction(input: unknown) {
  return act(agreeDoesNotBlock, input)
}

export async function nameCorrectiveActionAction(input: unknown) {
  return act(nameCorrectiveAction, input)
}

export async function finishCorrectiveActionAction(input: unknown) {
  return act(finishCorrectiveAction, input)
}
