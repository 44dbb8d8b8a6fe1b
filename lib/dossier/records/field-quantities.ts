/** Quantity that a list of readings is judged under, by record type and field. */
export const FIELD_QUANTITIES: Readonly<Record<string, readonly string[]>> = {
  'defect.wall': ['wall'],
  'cleanliness.salts': ['salts'],
  'profile.readings': ['profile'],
  'filler-thickness.after': ['filler-over-hole', 'filler-on-ring'],
  'filler-cure.readings': ['filler-hardness'],
  'hardness.readings': ['hardness'],
  'thickness.readings': ['laminate-thickness'],
  'in-service.wallBeyondEnds': ['wall-beyond-ends'],
  'removal.wall': ['removal-wall'],
}
