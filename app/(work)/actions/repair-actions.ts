'use server'
import { acceptRepair } from '@/lib/server/commands/accept-repair'
import { answerNotice } from '@/lib/server/commands/answer-notice'
import { answerQuery } from '@/lib/server/commands/answer-query'
import { decideImpact } from '@/lib/server/commands/decide-impact'
import { decideStandsOrRedo } from '@/lib/server/commands/decide-stands-or-redo'
import { dischargeCondition } from '@/lib/server/commands/discharge-condition'
import { holdRepair } from '@/lib/server/commands/hold-repair'
import { openRepair } from '@/lib/server/commands/open-repair'
import { raiseQuery } from '@/lib/server/commands/raise-query'
import { reviseLife } from '@/lib/server/commands/revise-life'
import { sendNotice } from '@/lib/server/commands/send-notice'
import { waiveHold } from '@/lib/server/commands/waive-hold'
import { act } from './act'

export async function openRepairAction(input: unknown) {
  return act(openRepair, input)
}

export async function holdRepairAction(input: unknown) {
  return act(holdRepair, input)
}

export async function acceptRepairAction(input: unknown) {
  return act(acceptRepair, input)
}

export async function dischargeConditionAction(input: unknown) {
  return act(dischargeCondition, input)
}

export async function reviseLifeAction(input: unknown) {
  return act(reviseLife, input)
}

export async function decideImpactAction(input: unknown) {
  return act(decideImpact, input)
}

export async function decideStandsOrRedoAction(input: unknown) {
  return act(decideStandsOrRedo, input)
}

export async function sendNoticeAction(input: unknown) {
  return act(sendNotice, input)
}

export async function answerNoticeAction(input: unknown) {
  return act(answerNotice, input)
}

export async function waiveHoldAction(input: unknown) {
  return act(waiveHold, input)
}

export async function raiseQueryAction(input: unknown) {
  return act(raiseQuery, input)
}

export async function answerQueryAction(input: unknown) {
  return act(answerQuery, input)
}
