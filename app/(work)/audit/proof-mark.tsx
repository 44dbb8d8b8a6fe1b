'use client'
import { useEffect, useState } from 'react'
import { Glyph } from '@/app/_ui/glyph'
import { type FactClaim, judgeFactClaim } from './read-log'

const WORDS = {
  included: 'Included in the log',
  'digest-differs': 'The bytes do not give the digest in the log',
  'leaf-malformed': 'The leaf has not the form',
  'not-included': 'The proof of inclusion does not hold',
} as const

/** Whether a fact stands in the log under a head, computed where the page is read: first by the server, then again by the browser from the same bytes. */
export function ProofMark({ claim }: { claim: FactClaim }) {
  const [isHere, setIsHere] = useState(false)
  useEffect(() => setIsHere(true), [])
  const found = judgeFactClaim(claim)
  const isGood = found === 'included'
  return (
    <span className={`mark ${isGood ? 'pass' : 'fail'}`}>
      <Glyph name={isGood ? 'pass' : 'fail'} />
      <span>
        {WORDS[found]}{' '}
        <span className="quiet small proof-where">
          {isHere ? 'computed in this browser' : 'computed by the server'}
        </span>
      </span>
    </span>
  )
}
