'use server'
import { endPerson } from '@/lib/server/commands/end-person'
import { invitePerson } from '@/lib/server/commands/invite-person'
import { recordQualification } from '@/lib/server/commands/record-qualification'
import { registerPerson } from '@/lib/server/commands/register-person'
import { renamePerson } from '@/lib/server/commands/rename-person'
import { act } from './act'

export async function registerPersonAction(input: unknown) {
  return act(registerPerson, input)
}

export async function renamePersonAction(input: unknown) {
  return act(renamePerson, input)
}

export async function endPersonAction(input: unknown) {
  return act(endPerson, input)
}

export async function recordQualificationAction(input: unknown) {
  return act(recordQualification, input)
}

export async function invitePersonAction(input: unknown) {
  return act(invitePerson, input)
}
