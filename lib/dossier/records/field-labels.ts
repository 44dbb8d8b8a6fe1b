/** Names of the fields of records as the trade prints them. A field that is not here is printed by its own words. */
export const FIELD_LABELS: Readonly<Record<string, string>> = {
  holeAxial: 'Hole along the pipe', holeHoop: 'Hole round the pipe', defectLength: 'Defect length', clock: 'Clock position', wall: 'Wall', diameters: 'Outside diameter by tape', girths: 'Girth by tape', nominalWall: 'Nominal wall',
  maxTemp: 'Highest temperature', minTemp: 'Lowest temperature', wantedLife: 'Wanted life', designDiameter: 'Design outside diameter', designWall: 'Design wall', designTemp: 'Design temperature', minThickness: 'Least thickness', overlapEachSide: 'Overlap each side',
  totalLength: 'Total length', testPressure: 'Test pressure', lifeYears: 'Life', firstInspectionOn: 'First inspection', holeAxialMax: 'Envelope: hole along, most', holeHoopMax: 'Envelope: hole round, most', minWallAtBandEdge: 'Envelope: wall at band edge, least',
  diameterMin: 'Envelope: diameter, least', diameterMax: 'Envelope: diameter, most', permitNo: 'Permit', pressureAtStart: 'Pressure at start', plannedUseOn: 'Planned use', packageState: 'Package', labelRead: 'Label read', labelText: 'Label as scanned',
  certificateMatches: 'Certificate matches', systemQualified: 'System as qualified', storedMin: 'Stored, lowest', storedMax: 'Stored, highest', reference: 'Reference piece', read: 'Read on it', dustClass: 'Dust class', salts: 'Soluble salts', oilFree: 'Free of oil',
  preparedLeft: 'Prepared to the left', preparedRight: 'Prepared to the right', finishedAt: 'Preparation finished', checkedAt: 'Looked at', tapeGross: 'Tape read with film', tapeKept: 'Tape kept as', takenAt: 'Taken', air: 'Air', humidity: 'Relative humidity',
  steelInstrument: 'Steel thermometer', change: 'Change of weather', resweptAndWiped: 'Re-swept and wiped', stationsMarked: 'Stations marked', freeOfFlashRust: 'Free of flash rust', bandBatch: 'Band batch', bandThickness: 'Band thickness', bandCut: 'Band cut to',
  bandTail: 'Tail', bandBuild: 'Build', plateThickness: 'Plate thickness', plateSize: 'Plate size', puttyBatch: 'Putty batch', puttyUsed: 'Putty used', kneadStart: 'Kneading began', kneadEnd: 'Kneading ended', oneColour: 'One colour', ambient: 'Ambient', pressedAt: 'Pressed on',
  bandTightAt: 'Band tight', judgedHardAt: 'Judged hard', overHole: 'Plug over the hole', surplusCut: 'Surplus cut off', nonSparkingAsked: 'Non-sparking tools asked', nonSparkingTools: 'Non-sparking tools used', pressureThen: 'Pressure then', leftInside: 'Left inside the repair',
  startedAt: 'Began', endedAt: 'Ended', wipeDry: 'White wipe dry', dripSeenAt: 'Drip seen', watchedBy: 'Watched by', mixNo: 'Mix', partA: 'Part A', partB: 'Part B', resinTemp: 'Resin', usedBy: 'Used up by', colourUniform: 'Colour uniform', holeMark: 'Mark over the hole',
  before: 'Height before', after: 'Height after', measuredAt: 'Measured', coveredLength: 'Covered length', coveredGirth: 'Covered girth', noWeep: 'No weep', weepAt: 'Weep at', plyNo: 'Ply', startClock: 'Start clock', jointOffset: 'End-joint offset', wetOut: 'Wetted out',
  airRolled: 'Air rolled out', rollNo: 'Roll', sealedUntilUse: 'Sealed until use', soakStart: 'Soak began', soakSeconds: 'Soak', water: 'Water', wrapStart: 'Wrap began', wrapEnd: 'Wrap ended', surface: 'Surface', tensionKept: 'Tension kept', usedUp: 'Used up', noGap: 'No gap',
  tapeWidth: 'Tape width', pitches: 'Pitch', startBeforeLeak: 'Start before the leak', endAfterLeak: 'End after the leak', heatSource: 'Heat source', postCure: 'Post-cure', seenAt: 'Seen', tapTested: 'Tap tested', noFindings: 'Nothing found', taperLeft: 'Taper left',
  taperRight: 'Taper right', offset: 'Middle of wrap from leak', noLeak: 'No leak on walk-down', labelNo: 'Label', labelFixed: 'Label fixed', labelReadable: 'Label readable', registerNo: 'Register no.', dossierRevision: 'Dossier revision', handedAt: 'Handed over', receivedBy: 'Received by',
  inspectedOn: 'Inspected on', colourChange: 'Colour changed', wallBeyondEnds: 'Wall beyond the ends', temp: 'Temperature', removedOn: 'Removed on', pipeTouched: 'Pipe touched', priedInHalves: 'Prised off in halves', samplesKept: 'Samples kept', disposalRef: 'Disposal',
  nextInspectionOn: 'Next inspection', classText: 'Class', mixedBy: 'Mixed by', checkedBy: 'Checked by', supervisedBy: 'Supervised by', placedBy: 'Placed by', placedAt: 'Placed', brushedAt: 'Brushed', brushedBy: 'Brushed by', wrappedBy: 'Wrapped by', measuredBy: 'Measured by',
  countedBy: 'Counted by', countedAt: 'Counted', spare: 'Left over', proportion: 'Proportion', validFrom: 'Valid from', validTo: 'Valid to', areaAuthority: 'Area authority', gasTest: 'Gas test', sparkRestricted: 'Spark restriction', sheetNo: 'Design sheet',
  defectKind: 'Defect', operatingPressure: 'Operating pressure', designPressure: 'Design pressure', depthSet: 'Depth set', depth: 'Depth', at: 'Time', of: 'Of', fromLeak: 'From the leak',
}

/** Fields that hold a person's id. */
export const PERSON_FIELDS: ReadonlySet<string> = new Set(['mixedBy', 'checkedBy', 'supervisedBy', 'placedBy', 'brushedBy', 'wrappedBy', 'measuredBy', 'countedBy', 'watchedBy', 'person', 'inspector'])

/** Titles of record types. */
export const RECORD_TITLES: Readonly<Record<string, string>> = {
  defect: 'Defect as found', design: 'Design sheet', permit: 'Permit, isolation and pressure state', stop: 'Work stopped or resumed', materials: 'Incoming materials', instruments: 'Instruments and persons', remark: 'Remark', cleanliness: 'Surface cleanliness', profile: 'Surface profile',
  climate: 'Climate', 'pre-wrap': 'Pre-wrap re-check', arrest: 'Temporary leak arrest', 'arrest-watch': 'Watch of the leak arrest', 'filler-mix': 'Filler mix', 'filler-thickness': 'Filler at marked points', 'filler-cure': 'Filler cure and hardness', weep: 'Weep', primer: 'Primer coat',
  'resin-mix': 'Resin mix', ply: 'Ply', 'ply-count': 'Ply count', 'tape-roll': 'Tape roll', 'tape-wrap': 'Tape wrap', cure: 'Cure', hardness: 'Hardness', thickness: 'Laminate thickness', visual: 'Visual, tap and dimensions', 'pressure-test': 'Pressure or leak test', checklist: 'Closing checklist',
  handover: 'Handover and label', 'in-service': 'In-service inspection', removal: 'Removal',
}

/** Quantity that a list of readings is judged under, by record type and field. */
export const FIELD_QUANTITIES: Readonly<Record<string, readonly string[]>> = {
  'defect.wall': ['wall'], 'cleanliness.salts': ['salts'], 'profile.readings': ['profile'], 'filler-thickness.after': ['filler-over-hole', 'filler-on-ring'], 'filler-cure.readings': ['filler-hardness'], 'hardness.readings': ['hardness'], 'thickness.readings': ['laminate-thickness'],
  'in-service.wallBeyondEnds': ['wall-beyond-ends'], 'removal.wall': ['removal-wall'],
}

/** The name of a field in print. */
export function fieldLabel(field: string): string {
  const words = field.replace(/([A-Z])/g, ' $1').toLowerCase()
  return FIELD_LABELS[field] ?? words.charAt(0).toUpperCase() + words.slice(1)
}
