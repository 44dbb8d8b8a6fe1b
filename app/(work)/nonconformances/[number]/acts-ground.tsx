import type { ReactNode } from 'react'
import { ActFold } from '@/app/_desk/act-fold'
import { ActForm, type ActFormProps } from '@/app/_desk/act-form'
import { offsetOf } from '@/app/_desk/require-desk'
import { mayMoveNonconformance, type NonconformanceAct } from '@/lib/domain/fold/may-move-nonconformance'
import { decidingActor } from '@/lib/server/commands/decision-ground'
import type { NonconformanceView } from '@/lib/server/views/nonconformance-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'

type PlainKind = Exclude<NonconformanceAct['kind'], 'disposition-proposed' | 'disposition-approved' | 'does-not-block'>
type Shared = { stream: string; heads: { stream: string; length: number }[]; utcOffset: string }

/** What the acts on a nonconformance stand on: the same rule that decides in the command, and the stream as it was seen. */
export type ActsGround = {
  reading: ReadingDesk
  view: NonconformanceView
  shared: Shared
  verdictOn(act: NonconformanceAct): ReturnType<typeof mayMoveNonconformance>
  can(kind: PlainKind): boolean
  /** Whether the reader is kept from verifying or closing because the work or the proposal is the reader's own. */
  isBarredAsDoer(kind: 'verified' | 'closed'): boolean
  act(title: string, note: string, form: Omit<ActFormProps, keyof Shared>, open?: boolean): ReactNode
}

/** The ground of the acts that one reader may do on one nonconformance. */
export function actsGround(reading: ReadingDesk, view: NonconformanceView): ActsGround {
  const { state, project } = view
  const utcOffset = offsetOf(reading)
  const actor = decidingActor(reading.desk, { project, offset: utcOffset })
  const shared = { stream: state.stream, heads: [{ stream: state.stream, length: view.length }], utcOffset }
  const verdictOn = (act: NonconformanceAct) => mayMoveNonconformance(state, act, actor)
  return {
    reading,
    view,
    shared,
    verdictOn,
    can: (kind) => verdictOn({ kind }).ok,
    isBarredAsDoer(kind) {
      const answer = verdictOn({ kind })
      return (
        !answer.ok && (answer.error.code === 'doer-does-not-verify' || answer.error.code === 'second-inspector-needed')
      )
    },
    act: (title, note, form, open = false) => (
      <ActFold key={title} title={title} {...(note ? { note } : {})} open={open}>
        <ActForm {...shared} {...form} />
      </ActFold>
    ),
  }
}
