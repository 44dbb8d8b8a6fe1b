import { PARTIES, type Participation, type Party } from '@/lib/domain/roles'

const WORDS: Record<Participation, string> = { H: 'hold', W: 'witness', R: 'review', M: 'monitor' }

/** Participation of crew, inspector, client and engineer at a point, in that order. */
export function Letters({ participation }: { participation: Record<Party, Participation | null> }) {
  const told = PARTIES.map((party) => {
    const code = participation[party]
    return code ? `${party}: ${WORDS[code]}` : null
  })
    .filter((word) => word !== null)
    .join(', ')
  return (
    <span className="letters" role="img" aria-label={told || 'no party takes part'} title={told}>
      {PARTIES.map((party) => (
        <b key={party} data-code={participation[party] ?? ''} aria-hidden="true">
          {participation[party] ?? '·'}
        </b>
      ))}
    </span>
  )
}
