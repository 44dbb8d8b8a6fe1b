/** A function by its reference name, its arguments, and the whole answer: every key of it, numbers to nine figures. */
export type WorkedCase = readonly [fn: string, inputs: Readonly<Record<string, unknown>>, answer: unknown]
