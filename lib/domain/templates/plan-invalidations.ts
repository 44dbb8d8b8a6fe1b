import type { z } from 'zod'
import type { Plan } from '../plan'

/** Which releases fall at which event, and what must be redone. Point 14 falls only while its resin is uncured; the engineer decides. */
export const PLAN_INVALIDATIONS: z.input<typeof Plan>['invalidations'] = [
  {
    event: 'wet',
    falls: ['05', '06', '07', '09', '13'],
    redo: 'Dry, blast or abrade again, measure again; the engineer decides when it came during lay-up (14 while the resin is uncured).',
  },
  { event: 'prep-lapsed', falls: ['05', '13'], redo: 'Prepare again; the profile may be measured again.' },
  {
    event: 'weep',
    falls: ['09', '10', '11', '12', '13', '14', '15', '16', '17', '18'],
    redo: 'New attempt; a nonconformance when it came after point 11.',
  },
  { event: 'touched', falls: ['05'], redo: 'Prepare the named area again and check that area again.' },
  { event: 'pressure-raised', falls: ['08', '09', '14', '15'], redo: 'The engineer decides.' },
  {
    event: 'working-time-exceeded',
    falls: ['14'],
    redo: 'Take off the plies made from that mix while wet, or raise a nonconformance.',
  },
  {
    event: 'cure-interrupted',
    falls: ['15', '16'],
    redo: 'Extend the cure or post-cure, then test the full grid again.',
  },
  { event: 'damage', falls: ['16', '17', '18', '19'], redo: 'Extra inspection.' },
  {
    event: 'stopped',
    falls: [],
    redo: 'On resuming: permit, climate and leak arrest are verified again; windows kept running.',
  },
]
