/** A decision of the domain that was refused. */
type Barrier = { code: string; [fact: string]: unknown }

/** Why a decision cannot be made here, in words, each with what to do. */
export function barrierWords(barrier: Barrier): string[] {
  const texts = (value: unknown): string[] => (Array.isArray(value) ? value.map(String) : [])
  switch (barrier.code) {
    case 'incomplete':
      return texts(barrier.missing)
    case 'verdict-not-pass':
      return [`The verdict is ${String(barrier.verdict)}: a release to the plan needs pass, or a concession.`]
    case 'blocked':
      return [`Point ${texts(barrier.by).join(', ')} is not released and valid, as far as this device knows.`]
    case 'nonconformance-blocks':
      return [`${texts(barrier.numbers).join(', ')} blocks this point until it is put right or conceded.`]
    case 'own-work':
      return ['Nobody releases work that they did themselves: another person must release it.']
    case 'not-allowed':
      return [`This is for: ${texts(barrier.needs).join(', ')}.`]
    case 'not-a-hold':
      return ['The plan gives that party no hold here.']
    case 'not-applicable':
      return ['The point is marked not applicable.']
    case 'already-released':
      return ['It is released already, with this scope.']
    case 'passed-without-release':
      return [
        'Work went past this hold before its release. A release after the fact does not cure it: raise a nonconformance.',
      ]
    case 'in-question':
      return ['The attempt is in question until a person decides its effect.']
    case 'attempt-superseded':
      return ['A later attempt is open: decide there.']
    case 'has-records':
      return ['Something is recorded in it: a point that was worked is not “not applicable”.']
    case 'client-agreement-missing':
      return ['It is a point of the client: the client’s agreement must be in the record first.']
    case 'release-fallen':
      return [`The release is ${String(barrier.state)} already.`]
    default:
      return [barrier.code.replaceAll('-', ' ')]
  }
}
