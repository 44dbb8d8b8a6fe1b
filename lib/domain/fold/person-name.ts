import type { PersonId } from '../facts/fact'
import { streamOf } from '../facts/fact'
import type { RepairGround } from './repair-ground'

/** The name of a person as the stream tells it; the id where the stream is not among the facts. */
export function personName(ground: Pick<RepairGround, 'persons'>, id: PersonId): string {
  return ground.persons[streamOf('person', id)]?.name ?? id
}
