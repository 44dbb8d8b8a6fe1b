'use client'
import { useId } from 'react'
import { Choice, plainOptions } from '@/app/_ui/choice'
import { LabelledInput } from '@/app/_ui/labelled-input'
import type { Role } from '@/lib/domain/roles'
import type { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import { DrawnPad } from './drawn-pad'

export type SignerChoice = { person: string; name: string; roles: readonly Role[]; hasAccount: boolean }
export type SignerState = {
  person: string
  role: Role | ''
  password: string
  /** Of who signs in person. */
  drawing?: DrawnSignature | null
}

/** Whether the signer is named, with a role and a password. */
export function signerReady(value: SignerState): boolean {
  return value.person !== '' && value.role !== '' && value.password !== ''
}

/** The signer as the commands take it; null while it is incomplete. */
export function signerValue(
  value: SignerState,
  signers: readonly SignerChoice[],
):
  | { by: 'password'; person: string; password: string }
  | { by: 'in person'; person: string; witnessPassword: string; drawing: DrawnSignature }
  | null {
  const chosen = signers.find((one) => one.person === value.person)
  if (!chosen || !signerReady(value)) return null
  if (chosen.hasAccount) return { by: 'password', person: value.person, password: value.password }
  return value.drawing
    ? { by: 'in person', person: value.person, witnessPassword: value.password, drawing: value.drawing }
    : null
}

/** Roles in which a person signs here; without an account in person, which is the client's alone. */
function signingRoles({ roles, hasAccount }: SignerChoice, only?: readonly Role[]): Role[] {
  return roles.filter(
    (role) => role !== 'administrator' && (hasAccount || role === 'client') && (!only || only.includes(role)),
  )
}

/** Who signs, in which role, and the password again. Nobody is chosen beforehand: a shared tablet never signs as its last user. */
export function SignerFields({
  signers,
  me,
  value,
  change,
  only,
}: {
  signers: readonly SignerChoice[]
  me: string
  value: SignerState
  change: (next: SignerState) => void
  only?: readonly Role[]
}) {
  const id = useId()
  const chosen = signers.find((one) => one.person === value.person)
  const roles = chosen ? signingRoles(chosen, only) : []
  const pick = (person: string) => {
    const next = signers.find((one) => one.person === person)
    const open = next ? signingRoles(next, only) : []
    change({ person, role: open.length === 1 && open[0] ? open[0] : '', password: '' })
  }
  return (
    <>
      <div className="field">
        <label htmlFor={`${id}-who`}>Who signs</label>
        <select id={`${id}-who`} value={value.person} onChange={(event) => pick(event.target.value)}>
          <option value="">Choose</option>
          {signers
            .filter((one) => signingRoles(one, only).length > 0)
            .map((one) => (
              <option key={one.person} value={one.person}>
                {one.name}
                {one.person === me ? ' (you)' : ''}
              </option>
            ))}
        </select>
      </div>
      {roles.length > 1 ? (
        <Choice
          legend="In the role of"
          options={plainOptions(roles)}
          value={value.role}
          change={(role) => change({ ...value, role })}
        />
      ) : null}
      {chosen && !chosen.hasAccount ? (
        <DrawnPad key={chosen.person} name={chosen.name} change={(drawing) => change({ ...value, drawing })} />
      ) : null}
      {chosen ? (
        <LabelledInput
          label={
            chosen.hasAccount
              ? `Password of ${chosen.name}`
              : `Your own password, as witness that ${chosen.name} signs in person`
          }
          type="password"
          value={value.password}
          change={(password) => change({ ...value, password })}
        />
      ) : null}
    </>
  )
}
