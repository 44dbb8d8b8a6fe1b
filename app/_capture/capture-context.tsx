'use client'
import { createContext, useContext } from 'react'
import type { JudgeContext } from '@/lib/domain/judge/judge-context'
import type { Unit } from '@/lib/domain/reading'
import type { Grid } from '@/lib/domain/records/common'

export type BatchChoice = { id: string; label: string; role: string; note: string; isBarred: boolean }
export type InstrumentChoice = { id: string; label: string; measures: readonly Unit[]; note: string; isBarred: boolean }
export type PersonChoice = { id: string; label: string }

/** What every control of a point form may draw on. */
export type CaptureContext = {
  judge: JudgeContext
  batches: readonly BatchChoice[]
  instruments: readonly InstrumentChoice[]
  persons: readonly PersonChoice[]
  /** Persons who record in the project: one of them wrote a paper tally. */
  observers: readonly PersonChoice[]
  /** The form copies from paper: nothing is stamped with the time of keying. */
  isFromPaper?: boolean
  /** The chalk grid of point 01, when it is there. */
  grid: Grid | null
  leakClock: string | null
  /** UTC offset of the site, `+01:00`. */
  utcOffset: string
  /** `real`: the device's own time counts. Otherwise the server's clock does (demonstration, tests). */
  clockKind: 'real' | 'demo' | 'test'
  /** Minutes after which an entry is late and needs its reason. */
  lateAfterMinutes: number
}

const Context = createContext<CaptureContext | null>(null)
export const CaptureProvider = Context.Provider

/** The capture context. @throws Error outside a point form: a bug */
export function useCapture(): CaptureContext {
  const value = useContext(Context)
  if (!value) throw new Error('a capture control stands outside its form')
  return value
}
