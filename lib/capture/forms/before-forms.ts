import { MATERIAL_ROLES } from '@/lib/domain/material-roles'
import { DESIGN_PROPERTIES_FIELDS, DESIGN_QUANTITIES_FIELDS } from './design-fields'
import type { FieldSpec, FormSpec } from './field-spec'

const REMARK: FieldSpec = { kind: 'remark', name: 'remark', label: 'Remark', optional: true }

export const DEFECT_FORM: FormSpec = {
  type: 'defect',
  title: 'Defect as found',
  observed: null,
  fields: [
    { kind: 'choice', name: 'defectKind', label: 'Kind of defect', options: ['through-wall', 'part-wall'] },
    { kind: 'measured', name: 'holeAxial', label: 'Hole along the pipe', units: ['mm', 'in'] },
    { kind: 'measured', name: 'holeHoop', label: 'Hole round the pipe', units: ['mm', 'in'] },
    { kind: 'measured', name: 'defectLength', label: 'Length of the defect along the pipe', units: ['mm', 'in'] },
    { kind: 'clock', name: 'clock', label: 'Clock position of the leak' },
    {
      kind: 'measured-list',
      name: 'diameters',
      label: 'Outside diameter by tape',
      units: ['mm', 'in'],
      addLabel: 'Add a diameter',
    },
    {
      kind: 'measured-list',
      name: 'girths',
      label: 'Girth by tape',
      units: ['mm', 'in'],
      addLabel: 'Add a girth',
      optional: true,
    },
    { kind: 'measured', name: 'nominalWall', label: 'Nominal wall', units: ['mm', 'in'] },
    { kind: 'chalk-grid', name: 'grid', label: 'Chalk grid' },
    { kind: 'instrument', name: 'instrument', label: 'Wall gauge', measures: ['mm'], optional: true },
    {
      kind: 'marks',
      name: 'wall',
      label: 'Wall at the marks',
      shape: 'stations',
      quantity: 'wall',
      unit: 'mm',
      special: true,
    },
    { kind: 'text', name: 'material', label: 'Material of the pipe' },
    { kind: 'text', name: 'medium', label: 'Medium' },
    { kind: 'measured', name: 'operatingPressure', label: 'Operating pressure', units: ['MPa', 'bar', 'psi'] },
    { kind: 'measured', name: 'designPressure', label: 'Design pressure', units: ['MPa', 'bar', 'psi'] },
    { kind: 'measured', name: 'minTemp', label: 'Lowest temperature', units: ['degC', 'degF'], optional: true },
    { kind: 'measured', name: 'maxTemp', label: 'Highest temperature', units: ['degC', 'degF'] },
    {
      kind: 'choice',
      name: 'cause',
      label: 'Cause',
      options: ['internal corrosion', 'external corrosion', 'erosion', 'mechanical damage', 'unknown'],
    },
    { kind: 'measured', name: 'wantedLife', label: 'Life wanted', units: ['yr'] },
    REMARK,
  ],
}

export const DESIGN_FORM: FormSpec = {
  type: 'design',
  title: 'Design output',
  observed: null,
  fields: [
    { kind: 'text', name: 'sheetNo', label: 'Design sheet' },
    { kind: 'whole', name: 'revision', label: 'Revision of the sheet' },
    { kind: 'measured', name: 'designDiameter', label: 'Outside diameter in the design', units: ['mm'] },
    { kind: 'measured', name: 'designWall', label: 'Wall in the design', units: ['mm'] },
    { kind: 'measured', name: 'designPressure', label: 'Design pressure', units: ['MPa', 'bar', 'psi'] },
    { kind: 'measured', name: 'designTemp', label: 'Design temperature', units: ['degC', 'degF'] },
    { kind: 'measured', name: 'plies', label: 'Plies', units: ['plies'] },
    { kind: 'measured', name: 'minThickness', label: 'Least laminate thickness', units: ['mm'] },
    { kind: 'measured', name: 'overlapEachSide', label: 'Overlap each side of the defect', units: ['mm'] },
    { kind: 'measured', name: 'taper', label: 'Taper each end', units: ['mm'] },
    { kind: 'measured', name: 'totalLength', label: 'Total length', units: ['mm'] },
    { kind: 'measured', name: 'testPressure', label: 'Test pressure', units: ['MPa', 'bar', 'psi'] },
    { kind: 'measured', name: 'lifeYears', label: 'Life', units: ['yr'] },
    { kind: 'day', name: 'firstInspectionOn', label: 'First inspection', optional: true },
    {
      kind: 'group',
      name: 'envelope',
      label: 'As found, the design holds for',
      of: [
        { kind: 'measured', name: 'holeAxialMax', label: 'Hole along the pipe, at most', units: ['mm'] },
        { kind: 'measured', name: 'holeHoopMax', label: 'Hole round the pipe, at most', units: ['mm'] },
        { kind: 'measured', name: 'minWallAtBandEdge', label: 'Wall at the ends of the band, at least', units: ['mm'] },
        { kind: 'measured', name: 'diameterMin', label: 'Outside diameter, at least', units: ['mm'] },
        { kind: 'measured', name: 'diameterMax', label: 'Outside diameter, at most', units: ['mm'] },
      ],
    },
    DESIGN_PROPERTIES_FIELDS,
    DESIGN_QUANTITIES_FIELDS,
    { kind: 'remark', name: 'basis', label: 'Basis of the design', optional: true },
    REMARK,
  ],
}

export const PERMIT_FORM: FormSpec = {
  type: 'permit',
  title: 'Permit, isolation and pressure',
  observed: null,
  fields: [
    { kind: 'text', name: 'permitNo', label: 'Permit' },
    { kind: 'moment', name: 'validFrom', label: 'Valid from' },
    { kind: 'moment', name: 'validTo', label: 'Valid to' },
    { kind: 'text', name: 'areaAuthority', label: 'Area authority, by name' },
    { kind: 'choice', name: 'state', label: 'State of the line', options: ['live', 'isolated', 'depressurised'] },
    { kind: 'measured', name: 'pressureAtStart', label: 'Pressure at start', units: ['MPa', 'bar', 'psi'] },
    { kind: 'text', name: 'gasTest', label: 'Gas test', optional: true },
    { kind: 'yes-no', name: 'sparkRestricted', label: 'Spark-restricted area' },
    REMARK,
  ],
}

export const STOP_FORM: FormSpec = {
  type: 'stop',
  title: 'Work stopped or resumed',
  observed: null,
  fields: [
    { kind: 'choice', name: 'what', label: 'The work is', options: ['stopped', 'resumed'] },
    { kind: 'text', name: 'reason', label: 'Why' },
  ],
}

export const MATERIALS_FORM: FormSpec = {
  type: 'materials',
  title: 'Incoming materials',
  observed: null,
  fields: [
    {
      kind: 'list',
      name: 'lines',
      label: 'Packages',
      each: 'Package',
      addLabel: 'Add a package',
      atLeast: 1,
      of: [
        { kind: 'choice', name: 'role', label: 'What it is', options: MATERIAL_ROLES },
        { kind: 'batch', name: 'batch', label: 'Batch', roles: MATERIAL_ROLES },
        { kind: 'choice', name: 'packageState', label: 'Package', options: ['sound', 'damaged', 'opened'] },
        { kind: 'yes-no', name: 'certificateMatches', label: 'Certificate matches the batch' },
        { kind: 'yes-no', name: 'systemQualified', label: 'Belongs to the qualified system' },
        { kind: 'measured', name: 'storedMin', label: 'Stored, coldest', units: ['degC', 'degF'], optional: true },
        { kind: 'measured', name: 'storedMax', label: 'Stored, warmest', units: ['degC', 'degF'], optional: true },
        { kind: 'choice', name: 'decision', label: 'Decision', options: ['taken', 'refused'] },
        { kind: 'text', name: 'reason', label: 'Reason, when refused', optional: true },
      ],
    },
    REMARK,
  ],
}

export const INSTRUMENTS_FORM: FormSpec = {
  type: 'instruments',
  title: 'Instruments and persons',
  observed: null,
  fields: [
    {
      kind: 'list',
      name: 'instruments',
      label: 'Instruments',
      each: 'Instrument',
      addLabel: 'Add an instrument',
      atLeast: 0,
      of: [
        { kind: 'instrument', name: 'instrument', label: 'Instrument', measures: [] },
        { kind: 'text', name: 'certificate', label: 'Certificate shown' },
        {
          kind: 'choice',
          name: 'coverage',
          label: 'Checked on a reference piece',
          options: ['full scale', 'mid scale', 'none'],
        },
        {
          kind: 'measured',
          name: 'reference',
          label: 'Reference value',
          units: ['mm', 'um', 'degC', '%', 'MPa', 'g', 'ShoreD', 'uS/cm'],
          optional: true,
        },
        {
          kind: 'reading',
          name: 'read',
          label: 'It read',
          units: ['mm', 'um', 'degC', '%', 'MPa', 'g', 'ShoreD', 'uS/cm'],
          optional: true,
        },
        {
          kind: 'measured',
          name: 'tolerance',
          label: 'Tolerance',
          units: ['mm', 'um', 'degC', '%', 'MPa', 'g', 'ShoreD', 'uS/cm'],
          optional: true,
        },
        { kind: 'choice', name: 'when', label: 'Check made', options: ['before', 'after'] },
        { kind: 'choice', name: 'decision', label: 'Decision', options: ['taken', 'refused'] },
        { kind: 'text', name: 'reason', label: 'Reason, when refused', optional: true },
      ],
    },
    {
      kind: 'list',
      name: 'persons',
      label: 'Persons',
      each: 'Person',
      addLabel: 'Add a person',
      atLeast: 0,
      of: [
        { kind: 'person', name: 'person', label: 'Person' },
        { kind: 'text', name: 'qualification', label: 'Qualification shown' },
        { kind: 'choice', name: 'task', label: 'Task', options: ['applicator', 'supervisor', 'inspector'] },
        { kind: 'person', name: 'supervisedBy', label: 'Supervised by', optional: true },
      ],
    },
    REMARK,
  ],
}

export const REMARK_FORM: FormSpec = {
  type: 'remark',
  title: 'Remark',
  observed: null,
  fields: [{ kind: 'remark', name: 'text', label: 'Remark' }],
}
