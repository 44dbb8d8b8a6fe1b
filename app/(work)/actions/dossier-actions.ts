'use server'
import { issueDossier } from '@/lib/server/commands/issue-dossier'
import { recordTransmittal } from '@/lib/server/commands/record-transmittal'
import { act } from './act'

export async function issueDossierAction(input: unknown) {
  return act(issueDossier, input)
}

export async function recordTransmittalAction(input: unknown) {
  return act(recordTransmittal, input)
}
