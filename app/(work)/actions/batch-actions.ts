'use server'
import { countBatch } from '@/lib/server/commands/count-batch'
import { issueBatch } from '@/lib/server/commands/issue-batch'
import { liftQuarantine } from '@/lib/server/commands/lift-quarantine'
import { notifyOwner } from '@/lib/server/commands/notify-owner'
import { openBatch } from '@/lib/server/commands/open-batch'
import { quarantineBatch } from '@/lib/server/commands/quarantine-batch'
import { recallBatch } from '@/lib/server/commands/recall-batch'
import { receiveBatch } from '@/lib/server/commands/receive-batch'
import { recordMakerLetter } from '@/lib/server/commands/record-maker-letter'
import { refuseBatch } from '@/lib/server/commands/refuse-batch'
import { returnBatch } from '@/lib/server/commands/return-batch'
import { wasteBatch } from '@/lib/server/commands/waste-batch'
import { act } from './act'

export async function receiveBatchAction(input: unknown) {
  return act(receiveBatch, input)
}

export async function openBatchAction(input: unknown) {
  return act(openBatch, input)
}

export async function issueBatchAction(input: unknown) {
  return act(issueBatch, input)
}

export async function returnBatchAction(input: unknown) {
  return act(returnBatch, input)
}

export async function wasteBatchAction(input: unknown) {
  return act(wasteBatch, input)
}

export async function countBatchAction(input: unknown) {
  return act(countBatch, input)
}

export async function refuseBatchAction(input: unknown) {
  return act(refuseBatch, input)
}

export async function quarantineBatchAction(input: unknown) {
  return act(quarantineBatch, input)
}

export async function recallBatchAction(input: unknown) {
  return act(recallBatch, input)
}

export async function recordMakerLetterAction(input: unknown) {
  return act(recordMakerLetter, input)
}

export async function notifyOwnerAction(input: unknown) {
  return act(notifyOwner, input)
}

export async function liftQuarantineAction(input: unknown) {
  return act(liftQuarantine, input)
}
