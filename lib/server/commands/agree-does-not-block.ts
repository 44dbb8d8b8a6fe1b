import { factCommand } from './fact-command'

/** Agree, for engineer or client, that an open nonconformance does not block acceptance; it takes both. Refusals: those of every fact command. */
export const agreeDoesNotBlock = factCommand({
  kind: 'does-not-block', on: 'nonconformance', act: (body) => (body.party === 'client' ? 'approve as client' : 'approve as engineer'),
})
