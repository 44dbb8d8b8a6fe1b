import type { FieldSpec } from '@/lib/capture/forms/field-spec'
import type { DrawFields } from './paper-list'
import { TickBoxes } from './write-box'

/** A choice that decides what else is asked: tick one, then fill the part below that names it. Choices that ask the same share a part. */
export function PaperVariant({ field, draw }: { field: Extract<FieldSpec, { kind: 'variant' }>; draw: DrawFields }) {
  const parts = new Map<string, { values: string[]; of: readonly FieldSpec[] }>()
  for (const { value, of } of field.variants) {
    const key = JSON.stringify(of)
    parts.set(key, { values: [...(parts.get(key)?.values ?? []), value], of })
  }
  return (
    <>
      <TickBoxes options={field.variants.map((one) => one.value)} />
      {[...parts.values()].map(({ values, of }) => (
        <div key={values.join()} className="tally-block">
          <p className="tally-label">For {values.join(', ')}</p>
          {draw.all(of)}
        </div>
      ))}
    </>
  )
}
