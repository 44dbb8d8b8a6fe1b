import { ActFold } from '@/app/_desk/act-fold'
import { ActForm } from '@/app/_desk/act-form'
import type { DeskField } from '@/app/_desk/desk-field'
import { mayAct } from '@/app/_desk/require-desk'
import { endPersonAction, recordQualificationAction, renamePersonAction } from '@/app/(work)/actions/person-actions'
import type { PersonView } from '@/lib/server/views/person-view'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'

const GEOMETRIES = ['straight', 'bend', 'tee', 'nozzle'].map((one) => ({ id: one, label: one }))
const QUALIFICATION: readonly DeskField[] = [
  { kind: 'text', name: 'number', label: 'Number of the certificate' },
  { kind: 'choice', name: 'task', label: 'Task', options: ['applicator', 'supervisor', 'inspector'] },
  {
    kind: 'several',
    name: 'geometries',
    label: 'Geometries',
    hint: 'None ticked: not limited',
    options: GEOMETRIES,
    optional: true,
  },
  { kind: 'day', name: 'validFrom', label: 'Valid from', optional: true },
  { kind: 'day', name: 'validTo', label: 'Valid to', hint: 'Key it from the certificate, digit by digit' },
]

/** What the reader may record of a person. */
export function PersonActs({ reading, view }: { reading: ReadingDesk; view: PersonView }) {
  const { stream } = view.state
  const heads = [{ stream, length: view.length }]
  const standing = view.qualifications.filter((one) => one.correctedBy === null)
  return (
    <section className="acts" aria-label={`Acts on ${view.state.name}`}>
      {mayAct(reading, 'keep qualifications') ? (
        <>
          <ActFold title="Record a qualification">
            <ActForm
              action={recordQualificationAction}
              kind="qualification-recorded"
              stream={stream}
              fields={QUALIFICATION}
              submit="Record"
              done="Recorded."
            />
          </ActFold>
          {standing.map(({ fact }) => (
            <ActFold
              key={fact.id}
              title={`Correct ${fact.body.number}`}
              note="what was keyed wrong; results that relied on it come in question"
            >
              <ActForm
                action={recordQualificationAction}
                kind="qualification-recorded"
                stream={stream}
                heads={heads}
                settled={{ corrects: fact.id }}
                submit="Record the correction"
                done="Corrected; the earlier entry stays readable."
                fields={[
                  ...QUALIFICATION,
                  { kind: 'remark', name: 'reason', label: 'What was wrong, and how it was found' },
                ]}
                initial={{
                  number: fact.body.number,
                  task: fact.body.task,
                  geometries: fact.body.geometries,
                  validFrom: fact.body.validFrom,
                }}
              />
            </ActFold>
          ))}
        </>
      ) : null}
      {mayAct(reading, 'administer') ? (
        <>
          <ActFold title="Change the name" note="identity and signatures stay">
            <ActForm
              action={renamePersonAction}
              kind="person-renamed"
              stream={stream}
              heads={heads}
              fields={[
                { kind: 'text', name: 'name', label: 'Name from now on' },
                { kind: 'text', name: 'reason', label: 'Reason' },
              ]}
              submit="Change the name"
              done="Changed."
            />
          </ActFold>
          {view.leftOn ? null : (
            <ActFold title="The person left" note="ends their rights; deletes nothing">
              <ActForm
                action={endPersonAction}
                kind="person-left"
                stream={stream}
                heads={heads}
                fields={[{ kind: 'day', name: 'on', label: 'Last day' }]}
                submit="Record that they left"
                done="Recorded."
                tone="stop"
              />
            </ActFold>
          )}
        </>
      ) : null}
    </section>
  )
}
