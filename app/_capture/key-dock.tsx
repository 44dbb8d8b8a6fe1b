'use client'
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useRef, useState } from 'react'
import { type KeyAllows, keyText } from '@/lib/capture/key-text'
import { KeyPad } from './key-pad'
import { ReadBack } from './read-back'
import { shakeKey } from './shake-key'
import { useHandSettings } from './use-hand-settings'

/** A field that the keys write into: read anew at each key. */
type Held = { label: string; unit: string; text: string; write(text: string): void; allows: KeyAllows }
type Dock = { hold(id: string, field: { current: Held }): void; leave(id: string): void }
const Dock = createContext<Dock | null>(null)

const SIDE = [
  { name: 'undo', label: 'Undo the last key', shown: 'Undo' },
  { name: 'close', label: 'Close the keys', shown: 'Close' },
  { name: 'previous', label: 'Field before', shown: 'Field before' },
  { name: 'next', label: 'Next field', shown: 'Next field' },
] as const
const KEYED = 'input[data-keyed]:not(:disabled)'

/** Our own keys at the foot of the screen for whichever field of numbers has the focus, where this device shows them. */
export function KeyDock({ children }: { children: ReactNode }) {
  const { hasLargeKeys } = useHandSettings()
  const [held, setHeld] = useState<{ id: string; field: { current: Held } } | null>(null)
  const [taken, setTaken] = useState<{ what: string; value: string } | null>(null)
  const [wasOpen, setWasOpen] = useState(false)
  const past = useRef<string[]>([])
  const dock = useMemo<Dock>(
    () => ({
      hold(id, field) {
        past.current = []
        setHeld({ id, field })
        setWasOpen(true)
      },
      leave(id) {
        setHeld((now) => {
          if (now?.id !== id) return now
          const { label, text, unit } = now.field.current
          if (text !== '') setTaken({ what: label, value: `${text} ${unit}`.trim() })
          return null
        })
      },
    }),
    [],
  )
  const press = useCallback(
    (key: string) => {
      const input = document.activeElement
      if (!held || !(input instanceof HTMLInputElement)) return
      const { text, write, allows } = held.field.current
      if (key === 'close') return input.blur()
      if (key === 'next' || key === 'previous') {
        const isMoved = moveFrom(input, key === 'next' ? 1 : -1)
        return shakeKey(isMoved ? 'taken' : 'refused')
      }
      const next = key === 'undo' ? past.current.pop() : keyText(text, key, allows)
      if (next === undefined || next === null) return shakeKey('refused')
      if (key !== 'undo') past.current.push(text)
      write(next)
      // two keys may come within one drawing: the second sees what the first wrote
      held.field.current = { ...held.field.current, text: next }
      shakeKey('taken')
    },
    [held],
  )
  const isOpen = hasLargeKeys && held !== null
  return (
    <Dock.Provider value={dock}>
      {children}
      {/* The room stays when the keys close: a page that grows shorter would move what a finger is on. */}
      {hasLargeKeys && wasOpen ? <div className="key-dock-room" /> : null}
      {isOpen ? (
        <section className="key-dock" aria-label={`Keys for ${held.field.current.label}`}>
          <ReadBack what={taken?.what ?? null} value={taken?.value ?? null} />
          <KeyPad
            press={press}
            side={SIDE}
            lead={leadOf(held.field.current.allows)}
            hasPoint={held.field.current.allows.point}
            isTabbed={false}
          />
        </section>
      ) : null}
    </Dock.Provider>
  )
}

function leadOf(allows: KeyAllows): 'sign' | 'limit' | null {
  return allows.sign ? 'sign' : allows.limits ? 'limit' : null
}

/** To the next field of numbers in the form, or the one before. @returns whether there was one */
function moveFrom(input: HTMLInputElement, step: 1 | -1): boolean {
  const fields = [...(input.form?.querySelectorAll<HTMLInputElement>(KEYED) ?? [])]
  const to = fields[fields.indexOf(input) + step]
  if (to) to.focus({ preventScroll: true })
  else if (step > 0) input.blur()
  return to !== undefined || step > 0
}

/** What an input needs to be keyed by our own keys: no keyboard of the device while they show, and its place above them. */
export function useKeyDock(id: string, held: Held) {
  const dock = useContext(Dock)
  const { hasLargeKeys } = useHandSettings()
  const field = useRef(held)
  field.current = held
  useEffect(() => () => dock?.leave(id), [dock, id])
  const isOurs = dock !== null && hasLargeKeys
  return {
    inputMode: isOurs ? ('none' as const) : held.allows.point ? ('decimal' as const) : ('numeric' as const),
    'data-keyed': dock ? '' : undefined,
    onFocus: (event: { currentTarget: HTMLInputElement }) => {
      dock?.hold(id, field)
      if (isOurs) event.currentTarget.scrollIntoView({ block: 'center' })
    },
    leave: () => dock?.leave(id),
  }
}
