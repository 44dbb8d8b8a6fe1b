import Link from 'next/link'
import type { RevisionRow } from '@/lib/server/views/specification-list-view'
import { pathOf } from './require-desk'

/** Specifications or plans with the revision in force. */
export function RevisionList({ rows, folder }: { rows: readonly RevisionRow[]; folder: 'specifications' | 'plans' }) {
  return (
    <div className="sheet">
      <table className="cards">
        <thead>
          <tr>
            <th>Number</th>
            <th>Title</th>
            <th>In force</th>
            <th>Draft</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.stream}>
              <th scope="row">
                <Link href={pathOf(folder, row.stream)}>{row.number}</Link>
              </th>
              <td>
                {row.title}
                <br />
                <span className="quiet small">{row.about}</span>
              </td>
              <td data-label="In force">
                {row.inForce ? (
                  <>
                    rev {row.inForce.revision}
                    <br />
                    <span className="quiet small nowrap">{row.inForce.issuedOn}</span>
                  </>
                ) : (
                  'none issued'
                )}
              </td>
              <td data-label="Draft">
                {row.hasDraft ? (
                  <Link className="row-link" href={`${pathOf(folder, row.stream)}?rev=draft`}>
                    draft open
                  </Link>
                ) : (
                  'none'
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
