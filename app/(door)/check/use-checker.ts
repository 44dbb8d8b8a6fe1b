'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { CheckNews, CheckOrder } from './check-messages'

/** Where a check stands: nothing asked yet, being read, answered, or not answered and why. */
export type CheckState =
  | { kind: 'idle' }
  | { kind: 'reading'; doneBytes: number; sizeBytes: number }
  | Exclude<CheckNews, { kind: 'ready' } | { kind: 'progress' }>

/** A worker that checks one file after the other. It is started with the page, so that a check later needs no network. */
export function useChecker(): { isReady: boolean; state: CheckState; check(order: CheckOrder): void } {
  const worker = useRef<Worker | null>(null)
  const [isReady, setReady] = useState(false)
  const [state, setState] = useState<CheckState>({ kind: 'idle' })
  useEffect(() => {
    const own = new Worker(new URL('./check-worker.ts', import.meta.url), { type: 'module' })
    own.addEventListener('message', ({ data }: MessageEvent<CheckNews>) => {
      if (data.kind === 'ready') setReady(true)
      else if (data.kind === 'progress') setState({ ...data, kind: 'reading' })
      else setState(data)
    })
    own.addEventListener('error', () =>
      setState({ kind: 'failed', text: 'The checker could not be started in this browser.' }),
    )
    worker.current = own
    return () => own.terminate()
  }, [])
  const check = useCallback((order: CheckOrder) => {
    setState({ kind: 'reading', doneBytes: 0, sizeBytes: order.file.size })
    worker.current?.postMessage(order)
  }, [])
  return { isReady, state, check }
}
