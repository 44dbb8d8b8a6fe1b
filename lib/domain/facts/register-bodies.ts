import * as z from 'zod'
import { StreamId } from './fact'

/** What stands before the digits of a repair's number. It ends with no digit, so that a number is read in one way only. */
export const NumberPrefix = z
  .string()
  .max(40)
  .regex(/^[A-Za-z0-9][A-Za-z0-9._/-]*$/, 'letters, digits, dots and dashes')
  .regex(/\D$/, 'it ends with a letter or a dash, before the digits')

/** Greatest number after a prefix, and the most that a block holds. */
export const NUMBER_AT_MOST = 999_999
export const BLOCK_AT_MOST = 50

/** Bodies of the facts of the stream `register:repair-numbers`. */
export const REGISTER_BODIES = {
  /** Repair numbers that only this device opens, in this project: from `from` to `to`, written with at least `digits` digits. */
  'numbers-allotted': z.lazy(() =>
    z
      .strictObject({
        device: StreamId,
        project: StreamId,
        prefix: NumberPrefix,
        digits: z.int().min(1).max(6),
        from: z.int().min(1).max(NUMBER_AT_MOST),
        to: z.int().min(1).max(NUMBER_AT_MOST),
      })
      .refine(({ from, to }) => to >= from && to - from < BLOCK_AT_MOST, {
        path: ['to'],
        message: `from one to ${BLOCK_AT_MOST} numbers`,
      }),
  ),
} as const
