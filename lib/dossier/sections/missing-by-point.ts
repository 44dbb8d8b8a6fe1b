import { type Cell, cell } from '../blocks'
import type { DossierContext } from '../dossier-context'
import { groupsOf } from '../groups-of'
import { named } from './sign-tables'

/** One row for each point that lacks something: the first thing in words and how many more; the index lists all of them. */
export function missingByPoint(context: DossierContext): Cell[][] {
  return [...groupsOf(context.state.missing, (one) => one.point)].map(([point, texts]) => {
    const [first, ...more] = texts.map((one) => named(one.text, context))
    return [cell(point ?? '–'), cell(`${first ?? ''}${more.length > 0 ? ` And ${more.length} more.` : ''}`)]
  })
}
