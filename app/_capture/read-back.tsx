'use client'
import { useHandSettings } from './use-hand-settings'

/** The value taken last, large, to be read back to who called it. Not drawn where the settings of this device leave it out. */
export function ReadBack({ what, value }: { what: string | null; value: string | null }) {
  const { settings } = useHandSettings()
  if (!settings.echoes) return null
  return (
    <p className="read-back" role="status">
      {what === null || value === null ? (
        <span className="quiet">Nothing taken yet.</span>
      ) : (
        <>
          <span className="quiet">Taken, {what}</span> <b>{value}</b>
        </>
      )}
    </p>
  )
}
