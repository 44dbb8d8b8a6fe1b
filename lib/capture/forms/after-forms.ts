import type { FieldSpec, FormSpec } from './field-spec'

const REMARK: FieldSpec = { kind: 'remark', name: 'remark', label: 'Remark', optional: true }
const DEGREES = ['degC', 'degF'] as const

export const VISUAL_FORM: FormSpec = {
  type: 'visual',
  title: 'Visual, tap and dimensions',
  observed: 'seenAt',
  fields: [
    { kind: 'moment', name: 'seenAt', label: 'Seen' },
    { kind: 'yes-no', name: 'tapTested', label: 'Tapped all over' },
    { kind: 'yes-no', name: 'noFindings', label: 'No findings' },
    {
      kind: 'list',
      name: 'findings',
      label: 'Findings',
      each: 'Finding',
      addLabel: 'Add a finding',
      atLeast: 0,
      of: [
        {
          kind: 'choice',
          name: 'kind',
          label: 'Kind',
          options: ['blister', 'wrinkle', 'dry area', 'pit', 'delamination', 'exposed fibre', 'resin run'],
        },
        { kind: 'text', name: 'place', label: 'At mark', hint: 'for example B-9' },
        { kind: 'measured', name: 'size', label: 'Size', units: ['mm', 'in'] },
        { kind: 'measured', name: 'depth', label: 'Depth', units: ['mm', 'in'], optional: true },
        REMARK,
      ],
    },
    { kind: 'measured', name: 'totalLength', label: 'Total length', units: ['mm', 'in'] },
    { kind: 'measured', name: 'taperLeft', label: 'Taper, upstream end', units: ['mm', 'in'] },
    { kind: 'measured', name: 'taperRight', label: 'Taper, downstream end', units: ['mm', 'in'] },
    { kind: 'measured', name: 'offset', label: 'Off centre from the leak', units: ['mm', 'in'], optional: true },
    REMARK,
  ],
}

export const CHECKLIST_FORM: FormSpec = {
  type: 'checklist',
  title: 'Closing checklist',
  observed: null,
  fields: [
    {
      kind: 'list',
      name: 'lines',
      label: 'Checklist',
      each: 'Line',
      addLabel: 'Add a line',
      atLeast: 1,
      of: [
        { kind: 'text', name: 'text', label: 'What was checked' },
        { kind: 'choice', name: 'answer', label: 'Answer', options: ['yes', 'no', 'not applicable'] },
        { kind: 'text', name: 'reason', label: 'Reason', optional: true },
      ],
    },
    { kind: 'yes-no', name: 'labelFixed', label: 'Label fixed' },
    { kind: 'measured', name: 'lifeYears', label: 'Life', units: ['yr'] },
    { kind: 'day', name: 'nextInspectionOn', label: 'Next inspection' },
    { kind: 'text', name: 'classText', label: 'Class', optional: true },
    REMARK,
  ],
}

export const HANDOVER_FORM: FormSpec = {
  type: 'handover',
  title: 'Handover and label',
  observed: 'handedAt',
  fields: [
    { kind: 'moment', name: 'handedAt', label: 'Handed over' },
    { kind: 'text', name: 'labelNo', label: 'Label' },
    { kind: 'yes-no', name: 'labelFixed', label: 'Label fixed' },
    { kind: 'yes-no', name: 'labelReadable', label: 'Label readable in place' },
    { kind: 'text', name: 'asset', label: 'Asset number', optional: true },
    { kind: 'text', name: 'registerNo', label: 'Register entry' },
    {
      kind: 'text-list',
      name: 'restrictions',
      label: 'Restrictions',
      addLabel: 'Add a restriction',
      hint: 'such as: no welding, blasting or clamping on it',
    },
    { kind: 'whole', name: 'dossierRevision', label: 'Dossier revision', optional: true },
    { kind: 'text', name: 'receivedBy', label: 'Received by' },
    REMARK,
  ],
}

export const IN_SERVICE_FORM: FormSpec = {
  type: 'in-service',
  title: 'In-service inspection',
  observed: null,
  fields: [
    { kind: 'day', name: 'inspectedOn', label: 'Inspected on' },
    { kind: 'person', name: 'inspector', label: 'Inspector' },
    { kind: 'text', name: 'access', label: 'Access', optional: true },
    { kind: 'choice', name: 'edges', label: 'Ends and edges', options: ['sound', 'lifting', 'not seen'] },
    { kind: 'choice', name: 'tap', label: 'Tap', options: ['sound', 'dull area', 'not done'] },
    { kind: 'yes-no', name: 'weep', label: 'Weep' },
    { kind: 'yes-no', name: 'colourChange', label: 'Change of colour' },
    { kind: 'yes-no', name: 'impact', label: 'Marks of impact' },
    { kind: 'instrument', name: 'instrument', label: 'Wall gauge', measures: ['mm'], optional: true },
    {
      kind: 'marks',
      name: 'wallBeyondEnds',
      label: 'Wall beyond the ends',
      shape: 'numbered',
      prefix: 'W',
      quantity: 'wall',
      unit: 'mm',
      special: true,
    },
    { kind: 'measured', name: 'pressure', label: 'Pressure', units: ['MPa', 'bar', 'psi'], optional: true },
    { kind: 'measured', name: 'temp', label: 'Temperature', units: DEGREES, optional: true },
    { kind: 'choice', name: 'result', label: 'Result', options: ['no change', 'changed, see remark', 'act now'] },
    REMARK,
  ],
}

export const REMOVAL_FORM: FormSpec = {
  type: 'removal',
  title: 'Removal or replacement',
  observed: null,
  fields: [
    { kind: 'day', name: 'removedOn', label: 'Removed on' },
    { kind: 'text', name: 'why', label: 'Why' },
    {
      kind: 'list',
      name: 'cuts',
      label: 'Lengthwise cuts',
      each: 'Cut',
      addLabel: 'Add a cut',
      atLeast: 1,
      of: [
        { kind: 'clock', name: 'clock', label: 'Clock position' },
        { kind: 'measured', name: 'depthSet', label: 'Depth set', units: ['mm'] },
      ],
    },
    { kind: 'yes-no', name: 'pipeTouched', label: 'Pipe touched by a cut' },
    { kind: 'yes-no', name: 'priedInHalves', label: 'Prised off in halves' },
    { kind: 'text', name: 'beneath', label: 'The pipe beneath' },
    { kind: 'text', name: 'plug', label: 'The plug' },
    { kind: 'instrument', name: 'instrument', label: 'Wall gauge', measures: ['mm'], optional: true },
    {
      kind: 'marks',
      name: 'wall',
      label: 'Wall beneath',
      shape: 'stations',
      quantity: 'wall',
      unit: 'mm',
      special: true,
    },
    { kind: 'text', name: 'samplesKept', label: 'Samples kept', optional: true },
    { kind: 'text', name: 'disposalRef', label: 'Disposal reference', optional: true },
    REMARK,
  ],
}
