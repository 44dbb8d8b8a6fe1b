'use client'
import { type ReactNode, useId } from 'react'
import { DrawnPad } from '@/app/_parts/drawn-pad'
import { Choice, plainOptions } from '@/app/_ui/choice'
import type { SignerHere } from '@/lib/capture/signing/signers-here'
import type { Role } from '@/lib/domain/roles'
import type { DrawnSignature } from '@/lib/domain/signing/drawn-signature'
import { PinField } from './pin-field'

/** Who signs on this device. `witness` is whose key it is when a client signs in person. */
export type SignerHereState = {
  person: string
  role: Role | ''
  witness: string
  drawing: DrawnSignature | null
  pin: string
}
export const NO_SIGNER: SignerHereState = { person: '', role: '', witness: '', drawing: null, pin: '' }

/** Whether everything is there to sign with. Whether the PIN is right only the key's ring can tell. */
export function isSignerReady(value: SignerHereState, signers: readonly SignerHere[]): boolean {
  const chosen = signers.find((one) => one.person === value.person)
  if (!chosen || value.role === '' || value.pin.length < 6) return false
  return chosen.by === 'key' || (value.drawing !== null && value.witness !== '')
}

/** Who signs, in which role, and the PIN of the key: asked each time, so that a shared tablet never signs as its last user. */
export function SignerHereFields({
  signers,
  me,
  value,
  change,
  only,
  isBusy,
  children,
}: {
  signers: readonly SignerHere[]
  me: string
  value: SignerHereState
  change: (next: SignerHereState) => void
  only?: readonly Role[]
  /** While a signature is made nothing is chosen: it would be cleared with the rest. */
  isBusy: boolean
  /** What is asked before the drawing and the PIN, such as the meaning. */
  children?: ReactNode
}) {
  const id = useId()
  const rolesOf = (one: SignerHere) => one.roles.filter((role) => !only || only.includes(role))
  const able = signers.filter((one) => rolesOf(one).length > 0)
  const chosen = able.find((one) => one.person === value.person)
  const roles = chosen ? rolesOf(chosen) : []
  const holders = signers.filter((one) => one.by === 'key')
  const pick = (person: string) => {
    const next = able.find((one) => one.person === person)
    const open = next ? rolesOf(next) : []
    change({
      ...NO_SIGNER,
      person,
      role: open.length === 1 && open[0] ? open[0] : '',
      witness: next?.by === 'in person' && holders.length === 1 ? (holders[0]?.person ?? '') : '',
    })
  }
  const keyOf = chosen?.by === 'in person' ? holders.find((one) => one.person === value.witness) : chosen
  if (able.length === 0) return <p className="quiet">Nobody who may do this signs on this device.</p>
  return (
    <fieldset disabled={isBusy} style={{ display: 'contents' }}>
      <div className="field">
        <label htmlFor={`${id}-who`}>Who signs</label>
        <select id={`${id}-who`} value={value.person} onChange={(event) => pick(event.target.value)}>
          <option value="">Choose</option>
          {able.map((one) => (
            <option key={one.person} value={one.person}>
              {one.name}
              {one.person === me ? ' (you)' : ''}
              {one.by === 'in person' ? ', in person' : ''}
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
      {children}
      {chosen?.by === 'in person' ? (
        <>
          {holders.length > 1 ? (
            <Choice
              legend={`Who sees ${chosen.name} sign`}
              options={holders.map((one) => ({ value: one.person, label: one.name }))}
              value={value.witness}
              change={(witness) => change({ ...value, witness, pin: '' })}
            />
          ) : null}
          <DrawnPad key={chosen.person} name={chosen.name} change={(drawing) => change({ ...value, drawing })} />
        </>
      ) : null}
      {keyOf ? (
        <PinField
          label={
            chosen?.by === 'in person'
              ? `PIN of ${keyOf.name}, as witness that ${chosen.name} signs in person`
              : `PIN of ${keyOf.name}`
          }
          value={value.pin}
          change={(pin) => change({ ...value, pin })}
        />
      ) : null}
    </fieldset>
  )
}
