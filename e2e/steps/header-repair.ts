/** What a new repair of the header line in the test store says, by the labels that a person reads. */
export const HEADER_REPAIR = {
  texts: [
    ['Line number', 'MDW-200-HD1-0127'],
    ['What the line is', 'header'],
    ['Datum', 'flange F-3'],
    ['Leak from the datum, mm', '860'],
  ],
  project: 'QDM-SHAFT-2',
  choices: [
    ['Specification', 'QP-MD-12'],
    ['Inspection plan', 'ITP-MD-12'],
    ['Clock position of the leak', '6 o’clock'],
  ],
  groups: [
    ['Kind of leak arrest', 'tapered plug'],
    ['Geometry', 'straight'],
  ],
} as const
