'use client'
import type { Control, FieldValues } from 'react-hook-form'
import { DeskControl } from '@/app/_desk/desk-control'
import type { Choice } from '@/app/_desk/desk-field'
import { EVENT_TEXT, INVALIDATING_EVENTS } from '@/lib/domain/plan'

/** What each event makes fall, and what must be redone then. */
export function InvalidationsEditor({
  control,
  numbers,
}: {
  control: Control<FieldValues>
  numbers: readonly Choice[]
}) {
  return (
    <details className="act">
      <summary>
        <span>What makes earlier releases fall</span>
        <span className="quiet small">rain, weep, damage and the like</span>
      </summary>
      <div className="act-body">
        <DeskControl
          control={control}
          spec={{
            kind: 'list',
            name: 'invalidations',
            label: 'Events',
            each: 'Event',
            addLabel: 'Add an event',
            of: [
              {
                kind: 'select',
                name: 'event',
                label: 'Event',
                options: INVALIDATING_EVENTS.map((event) => ({ id: event, label: EVENT_TEXT[event] })),
              },
              { kind: 'several', name: 'falls', label: 'Releases that fall', options: numbers },
              { kind: 'remark', name: 'redo', label: 'What must be redone' },
            ],
          }}
        />
      </div>
    </details>
  )
}
