/** What a batch of material is for in a repair. */
export const MATERIAL_ROLES = [
  'resin',
  'hardener',
  'filler',
  'primer',
  'fabric',
  'tape',
  'putty',
  'band',
  'release film',
  'other',
] as const
