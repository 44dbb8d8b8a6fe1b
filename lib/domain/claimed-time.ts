type Claims = { takenAt: string | null; offset: string | null }

/** When a photo was taken by its own file, as the file writes it, and its UTC offset: of the time itself, else as claimed beside it, else null. Null when the file claims no time. */
export function claimedTime({ takenAt, offset }: Claims): { time: string; offset: string | null } | null {
  if (takenAt === null) return null
  const own = /(Z|[+-]\d{2}:\d{2})$/.exec(takenAt)?.[0]
  return own ? { time: takenAt.slice(0, -own.length), offset: own } : { time: takenAt, offset }
}

/** The same to be read: `2026-05-20 08:14:00 +01:00`; null when the file claims no time. */
export function showClaimedTime(claims: Claims): string | null {
  const claimed = claimedTime(claims)
  return claimed && `${claimed.time.replace('T', ' ')} ${claimed.offset ?? 'offset unknown'}`
}
