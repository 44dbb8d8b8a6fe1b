import type { QuantityLine } from '@/lib/domain/design/quantity-sheet'

/** What to draw from stores, what was used, and the difference. Nothing recorded is said, and is no zero. */
export function QuantityTable({ lines }: { lines: readonly QuantityLine[] }) {
  return (
    <table className="cards quantity-table">
      <thead>
        <tr>
          <th>What</th>
          <th>Computed, with spare or waste</th>
          <th>Used so far</th>
          <th>Used against computed</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.what}>
            <th scope="row">{line.what}</th>
            <td data-label="Computed">
              {line.refusal === null ? (
                <strong className="quantity">{line.needed}</strong>
              ) : (
                <span className="not-proven">Not computed: {line.refusal}</span>
              )}
            </td>
            <td data-label="Used so far">{line.used}</td>
            <td data-label="Used against computed">{line.difference ?? 'not compared'}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
