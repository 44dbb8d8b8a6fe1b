/** A reason in words, or a remark. */
export function ReasonField({
  label,
  value,
  change,
}: {
  label: string
  value: string
  change: (next: string) => void
}) {
  return (
    <label className="field">
      <span className="label">{label}</span>
      <textarea value={value} onChange={(event) => change(event.target.value)} />
    </label>
  )
}
