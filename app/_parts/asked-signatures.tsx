import type { Meaning, Role } from '@/lib/domain/roles'

/** The signatures that the plan still asks for; nothing when none. */
export function AskedSignatures({ asked }: { asked: readonly { meaning: Meaning; role: Role }[] }) {
  return asked.length === 0 ? null : (
    <p className="quiet small">The plan asks for: {asked.map((one) => `${one.meaning} by ${one.role}`).join(', ')}.</p>
  )
}
