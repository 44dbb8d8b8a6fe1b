'use client'
import { createContext } from 'react'
import type { TypedMark } from '@/lib/capture/without-mark'

/** Tells the form which mark is being typed, and null when it was left. */
export const TellTypedMark = createContext<(typed: TypedMark | null) => void>(() => undefined)
