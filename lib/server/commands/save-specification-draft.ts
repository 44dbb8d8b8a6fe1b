import * as z from 'zod'
import { StreamId, streamKind } from '@/lib/domain/facts/fact'
import { SPECIFICATION_BODIES } from '@/lib/domain/facts/project-bodies'
import { refused } from '@/lib/domain/result'
import { authorise } from './authorise'
import { command } from './command'
import { Entry } from './entry'

const SaveSpecificationDraft = z.strictObject({
  stream: StreamId.refine((id) => streamKind(id) === 'specification', 'a specification'),
  body: SPECIFICATION_BODIES['specification-draft-saved'],
  ...Entry,
})

/** Save a draft of a specification, the first of which opens its stream. Drafts are kept; none is a limit in force. Refuses `invalid`, `not-allowed`, `heads-moved`. */
export const saveSpecificationDraft = command(SaveSpecificationDraft, async (desk, form) => {
  const barred = authorise(desk.actor, 'any', desk.today(null), 'draft specification or plan')
  if (barred) return refused(barred)
  const fact = desk.make({
    stream: form.stream,
    kind: 'specification-draft-saved',
    body: form.body,
    entry: form,
    offset: null,
  })
  return desk.append([fact], form.heads ?? [])
})
