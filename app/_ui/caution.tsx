import { STANDING_CAUTION } from '@/lib/domain/caution'

/** The standing caution, on every screen that steers work. */
export function Caution() {
  return (
    <footer className="caution-strip">
      <strong>Caution.</strong> {STANDING_CAUTION}
    </footer>
  )
}
