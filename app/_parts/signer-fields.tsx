'use client'
import { useId } from 'react'
import type { Role } from '@/lib/domain/roles'

export type SignerChoice = { person: string; name: string; roles: readonly Role[]; hasAccount: boolean }
export type SignerState = { person: string; role: Role | ''; password: string }

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
  | { by: 'in person'; person: string; witnessPassword: string }
  | null {
  const chosen = signers.find((one) => one.person === value.person)
  if (!chosen || !signerReady(value)) return null
  return chosen.hasAccount
    ? { by: 'password', person: value.person, password: value.password }
    : { by: 'in person', person: value.person, witnessPassword: value.password }
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
  const roles = (chosen?.roles ?? []).filter((role) => role !== 'administrator' && (!only || only.includes(role)))
  const pick = (person: string) => {
    const next = signers.find((one) => one.person === person)
    const open = (next?.roles ?? []).filter((role) => role !== 'administrator' && (!only || only.includes(role)))
    change({ person, role: open.length === 1 && open[0] ? open[0] : '', password: '' })
  }
  return (
    <>
      <div className="field">
        <label htmlFor={`${id}-who`}>Who signs</label>
        <select id={`${id}-who`} value={value.person} onChange={(event) => pick(event.target.value)}>
          <option value="">Choose</option>
          {signers
            .filter((one) => !only || one.roles.some((role) => only.includes(role)))
            .map((one) => (
              <option key={one.person} value={one.person}>
                {one.name}
                {one.person === me ? ' (you)' : ''}
              </option>
            ))}
        </select>
      </div>
      {roles.length > 1 ? (
        <fieldset className="field">
          <legend className="label">In the role of</legend>
          <div className="choice">
            {roles.map((role) => (
              <label key={role}>
                <input
                  type="radio"
                  name={`${id}-role`}
                  checked={value.role === role}
                  onChange={() => change({ ...value, role })}
                />
                {role}
              </label>
            ))}
          </div>
        </fieldset>
      ) : null}
      {chosen ? (
        <div className="field">
          <label htmlFor={`${id}-word`}>
            {chosen.hasAccount
              ? `Password of ${chosen.name}`
              : `Your own password, as witness that ${chosen.name} signs in person`}
          </label>
          <input
            id={`${id}-word`}
            type="password"
            autoComplete="off"
            value={value.password}
            onChange={(event) => change({ ...value, password: event.target.value })}
          />
        </div>
      ) : null}
    </>
  )
}
