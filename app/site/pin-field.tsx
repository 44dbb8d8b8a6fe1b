'use client'
import { LabelledInput } from '@/app/_ui/labelled-input'

/** A PIN, covered as it is keyed. Asked at each signature and never remembered. */
export function PinField({
  change,
  ...field
}: {
  label: string
  hint?: string
  value: string
  change: (pin: string) => void
}) {
  return (
    <LabelledInput
      {...field}
      type="password"
      inputMode="numeric"
      maxLength={12}
      change={(text) => change(text.replaceAll(/\D/g, ''))}
    />
  )
}
