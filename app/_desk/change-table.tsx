import type { Change } from '@/lib/server/views/specification-changes'

/** What one revision changes of the one before it: old and new side by side, told by word and sign. */
export function ChangeTable({ changes }: { changes: readonly Change[] }) {
  if (changes.length === 0) return <p className="quiet">Nothing differs from the revision before.</p>
  return (
    <table className="cards">
      <thead>
        <tr>
          <th>Where</th>
          <th>Before</th>
          <th>After</th>
        </tr>
      </thead>
      <tbody>
        {changes.map((change) => (
          <tr key={`${change.where}${change.before ?? ''}${change.after ?? ''}`}>
            <th scope="row">{change.where}</th>
            <td data-label="Before">
              {change.before === null ? (
                <span className="added">+ not there</span>
              ) : change.after === null ? (
                <span className="old-value">{change.before}</span>
              ) : (
                change.before
              )}
            </td>
            <td data-label="After">
              {change.after === null ? (
                <span className="taken">− taken away</span>
              ) : change.before === null ? (
                <span className="added">+ {change.after}</span>
              ) : (
                <strong>{change.after}</strong>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
