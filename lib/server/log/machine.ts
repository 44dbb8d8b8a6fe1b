import { PersonId } from '@/lib/domain/facts/fact'

/** Who stands in the log for a command that somebody ran on the server's machine without signing in. */
export const MACHINE = PersonId.parse('server')
