'use client'
import dynamic from 'next/dynamic'
import type { RecordFormProps } from './record-form'

const load = () => import('./record-form')
const Form = dynamic<RecordFormProps>(async () => (await load()).RecordForm, {
  ssr: false,
  loading: () => <p className="quiet">Opening the form.</p>,
})
// Fetched beside the framework, not after it. What fails here is asked for again, and told, where it is drawn.
if (typeof document !== 'undefined') load().catch(() => undefined)

/** The form of one record, drawn once it can keep what is keyed: fields from the server alone would take keys and lose them. */
export function RecordFormLater(props: RecordFormProps) {
  return <Form {...props} />
}
