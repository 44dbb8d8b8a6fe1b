'use server'
import { checkInstrument } from '@/lib/server/commands/check-instrument'
import { findInstrumentWrong } from '@/lib/server/commands/find-instrument-wrong'
import { quarantineInstrument } from '@/lib/server/commands/quarantine-instrument'
import { recordCertificate } from '@/lib/server/commands/record-certificate'
import { registerInstrument } from '@/lib/server/commands/register-instrument'
import { act } from './act'

export async function registerInstrumentAction(input: unknown) {
  return act(registerInstrument, input)
}

export async function recordCertificateAction(input: unknown) {
  return act(recordCertificate, input)
}

export async function checkInstrumentAction(input: unknown) {
  return act(checkInstrument, input)
}

export async function findInstrumentWrongAction(input: unknown) {
  return act(findInstrumentWrong, input)
}

export async function quarantineInstrumentAction(input: unknown) {
  return act(quarantineInstrument, input)
}
