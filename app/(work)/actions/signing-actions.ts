'use server'
import { endSigningKey } from '@/lib/server/commands/end-signing-key'
import { settleConflict } from '@/lib/server/commands/settle-conflict'
import { takeSigningKey } from '@/lib/server/commands/take-signing-key'
import { act } from './act'

export async function takeSigningKeyAction(input: unknown) {
  return act(takeSigningKey, input)
}

export async function endSigningKeyAction(input: unknown) {
  return act(endSigningKey, input)
}

export async function settleConflictAction(input: unknown) {
  return act(settleConflict, input)
}
