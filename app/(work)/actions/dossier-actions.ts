'use server'
import { recordTransmittal } from '@/lib/server/commands/record-transmittal'
import { act } from './act'

export async function recordTransmittalAction(input: unknown) {
  return act(recordTransmittal, input)
}
