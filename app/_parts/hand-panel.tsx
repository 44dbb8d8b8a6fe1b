'use client'
import { useEffect, useId, useRef, useState } from 'react'
import { createPortal } from 'react-dom'
import { shakeKey } from '@/app/_capture/shake-key'
import { useHandSettings } from '@/app/_capture/use-hand-settings'
import { Choice, plainOptions } from '@/app/_ui/choice'
import { shownTheme, showTheme, type Theme } from '@/app/_ui/theme-choice'

/** Screen and keys as this device keeps them: day or night, large keys, shaking, reading back. One place for all of them, and none follows a person to another device. */
export function HandPanel() {
  const [isOpen, setOpen] = useState(false)
  return (
    <>
      <button type="button" onClick={() => setOpen(true)}>
        Screen and keys
      </button>
      {/* outside the bar, whose menu may close under it */}
      {isOpen ? createPortal(<Panel close={() => setOpen(false)} />, document.body) : null}
    </>
  )
}

function Panel({ close }: { close: () => void }) {
  const id = useId()
  const dialog = useRef<HTMLDialogElement>(null)
  const { settings, hasLargeKeys, change } = useHandSettings()
  const [theme, setTheme] = useState<Theme>(shownTheme)
  useEffect(() => dialog.current?.showModal(), [])
  const turn = (next: Theme) => {
    showTheme(next)
    setTheme(next)
  }
  return (
    <dialog ref={dialog} className="sheet hand-panel" aria-labelledby={`${id}-head`} onClose={close}>
      <div className="stack">
        <h2 id={`${id}-head`}>Screen and keys</h2>
        <p className="quiet small">Kept on this device alone.</p>
        <Choice
          legend="Screen"
          hint="Day for sun and glare, night for dark shafts."
          options={plainOptions(['day', 'night'] as const)}
          value={theme}
          change={turn}
        />
        <Switch
          label="Large keys for numbers"
          hint="In the place of the device’s own keyboard."
          isOn={hasLargeKeys}
          turn={(largeKeys) => change({ largeKeys })}
        />
        <Switch
          label="Shake at each key"
          hint="Short for a key that was taken, long for one that was refused. A timer that runs out shakes all the same."
          isOn={settings.shakes}
          turn={(shakes) => {
            change({ shakes })
            shakeKey('taken')
          }}
        />
        <Switch
          label="Read back large"
          hint="The value taken last stands over the keys, to be read back to who called it."
          isOn={settings.echoes}
          turn={(echoes) => change({ echoes })}
        />
        <button type="button" className="button wide" onClick={() => dialog.current?.close()}>
          Done
        </button>
      </div>
    </dialog>
  )
}

function Switch({
  label,
  hint,
  isOn,
  turn,
}: {
  label: string
  hint: string
  isOn: boolean
  turn: (isOn: boolean) => void
}) {
  return (
    <Choice
      legend={label}
      hint={hint}
      options={plainOptions(['on', 'off'] as const)}
      value={isOn ? 'on' : 'off'}
      change={(one) => turn(one === 'on')}
    />
  )
}
