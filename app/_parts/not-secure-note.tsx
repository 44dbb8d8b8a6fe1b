'use client'
import { useEffect, useState } from 'react'

/** Whether a browser keeps anything for this address; null until it is known. */
export function useIsSecure(): boolean | null {
  const [isSecure, setSecure] = useState<boolean | null>(null)
  useEffect(() => setSecure(window.isSecureContext), [])
  return isSecure
}

/** Says in plain sight that capture without a network is off at this address, why, and what to do. Nothing where the address is secure. */
export function NotSecureNote() {
  if (useIsSecure() !== false) return null
  return (
    <div className="note warn" role="status">
      <strong>Capture without a network is off at this address.</strong>
      <span>
        A browser keeps a repair, and what you capture, only for an address that begins with https. This one is{' '}
        {location.origin}. Ask who runs Underwrap for its https address. Until then work only where there is a network.
      </span>
    </div>
  )
}
