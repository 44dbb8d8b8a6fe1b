/** Minutes from event to entry, and from entry to receipt, beyond which a person is told so; an entry then needs its reason. About the time that a full grid takes to key. */
export const LATE_AFTER_MINUTES = 60
