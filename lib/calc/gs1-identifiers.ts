type Field = { readonly ai: string; readonly digits: number | null; readonly most: number }

const digits = <const Ai extends string>(ai: Ai, count: number) => ({ ai, digits: count, most: count })
const signs = <const Ai extends string>(ai: Ai, most: number) => ({ ai, digits: null, most })

/** In the order in which a label states them: fixed fields first, so that fewer separators are needed. */
const FIELDS = [
  digits('01', 14),
  digits('11', 6),
  digits('17', 6),
  digits('3100', 6),
  digits('3101', 6),
  digits('3102', 6),
  digits('3103', 6),
  digits('3104', 6),
  digits('3105', 6),
  signs('10', 20),
  signs('21', 20),
  signs('240', 30),
  signs('8004', 30),
] as const satisfies readonly Field[]

/**
 * Application identifiers read here: GTIN (01), production (11) and expiry (17) date, net weight in kg (310n, n decimals),
 * batch (10), serial number (21), additional product number (240), individual asset (8004).
 */
export type ApplicationIdentifier = (typeof FIELDS)[number]['ai']

/** How the value of an identifier is built: `digits` of them, or where that is null up to `most` signs of set 82. */
export interface Gs1Field {
  readonly ai: ApplicationIdentifier
  readonly digits: number | null
  readonly most: number
}

/** `reference`: the five identifiers of a batch label. `label`: every identifier of {@link ApplicationIdentifier}. */
export type IdentifierSet = 'reference' | 'label'

/** The fields of a set, in the order in which a label states them. @source GS1 General Specifications section 3. High. */
export const GS1_FIELDS: Readonly<Record<IdentifierSet, readonly Gs1Field[]>> = {
  reference: FIELDS.filter(({ ai }) => ['01', '10', '11', '17', '21'].includes(ai)),
  label: FIELDS,
}
