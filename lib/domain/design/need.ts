import { isRefused, type Refusal } from '@/lib/calc/refusal'
import { showComputed } from './equation'
import { refusalWords } from './refusal-words'

/** An amount to draw from stores, with its text, or in words why it is not known. */
export type Need = { value: number; text: string } | { refusal: string }

/** The amount that an answer holds. @param pick the figure of the answer, in `unit` @param places decimal places shown */
export function needOf<T extends object>(
  answer: T,
  pick: (one: Exclude<T, Refusal>) => number,
  unit: string,
  places: number,
): Need {
  if (isRefused(answer)) return { refusal: refusalWords(answer.refused) }
  const value = pick(answer as Exclude<T, Refusal>)
  return { value, text: `${showComputed(value, places)} ${unit}` }
}
