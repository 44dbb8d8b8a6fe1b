'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { LabelAsk } from './label-scan'

/** Asks for a label and leads to what it says. The camera starts at a tap, not by itself. */
export function LabelAsker() {
  const router = useRouter()
  const [isLooking, setLooking] = useState(false)
  return (
    <section className="sheet stack tight" aria-label="Read a label">
      {isLooking ? null : (
        <button type="button" className="button" onClick={() => setLooking(true)}>
          Start the camera
        </button>
      )}
      <LabelAsk
        key={String(isLooking)}
        withCamera={isLooking}
        take={({ text }) => {
          setLooking(false)
          router.push(`/scan?label=${encodeURIComponent(text)}`)
        }}
      />
    </section>
  )
}
