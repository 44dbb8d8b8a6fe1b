import * as z from 'zod'
import { PointNo } from '../specification'

export const Attempt = z.int().min(1).max(99)

/** The point and attempt that a fact of a repair is about. */
export const AtPoint = { point: PointNo, attempt: Attempt }
