import fc from 'fast-check'
import { isRefused, type Refusal } from '@/lib/calc/refusal'

export function answered<Answer>(answer: Answer | Refusal): Answer {
  if (isRefused(answer)) throw new Error(`refused: ${answer.refused}`)
  return answer
}

export const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
