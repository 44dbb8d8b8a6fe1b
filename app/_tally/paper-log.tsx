import { logParts, type PaperForm } from '@/lib/capture/tally/paper-forms'
import type { PaperGround } from '@/lib/capture/tally/paper-marks'
import { showUnit } from '@/lib/domain/reading'
import { PaperInput } from './paper-field'

/** Records of one kind side by side, a column each: plies, rolls, counts. */
export function PaperLog({ form, ground }: { form: PaperForm; ground: PaperGround }) {
  return (
    <>
      {logParts(form.copies).map((part) => (
        <table key={part[0]} className="tally-list log">
          <thead>
            <tr>
              <th />
              {part.map((no) => (
                <th key={no}>{no}</th>
              ))}
            </tr>
          </thead>
          <tbody>
            {form.fields.map((field) => (
              <tr key={field.name}>
                <th>
                  {field.label} {'units' in field ? <i>{field.units.map(showUnit).join(' or ')}</i> : null}
                  {field.optional ? <i> if any</i> : null}
                  {field.hint ? <i> {field.hint}</i> : null}
                </th>
                {part.map((no) => (
                  <td key={no}>
                    {field.kind === 'yes-no' || field.kind === 'moment' ? (
                      <PaperInput field={field} ground={ground} isNarrow />
                    ) : null}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </>
  )
}
