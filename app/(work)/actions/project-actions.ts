'use server'
import { checkClock } from '@/lib/server/commands/check-clock'
import { endRole } from '@/lib/server/commands/end-role'
import { grantRole } from '@/lib/server/commands/grant-role'
import { nameParty } from '@/lib/server/commands/name-party'
import { openProject } from '@/lib/server/commands/open-project'
import { registerDevice } from '@/lib/server/commands/register-device'
import { act } from './act'

export async function openProjectAction(input: unknown) {
  return act(openProject, input)
}

export async function namePartyAction(input: unknown) {
  return act(nameParty, input)
}

export async function grantRoleAction(input: unknown) {
  return act(grantRole, input)
}

export async function endRoleAction(input: unknown) {
  return act(endRole, input)
}

export async function registerDeviceAction(input: unknown) {
  return act(registerDevice, input)
}

export async function checkClockAction(input: unknown) {
  return act(checkClock, input)
}
