import { Glyph } from '@/app/_ui/glyph'

/** Says of a statement that it is on this device alone. */
export function NotSent() {
  return (
    <span className="mark not-proven not-sent">
      <Glyph name="open" />
      Not yet sent
    </span>
  )
}
