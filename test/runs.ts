/** Runs of a property: as many as UNDERWRAP_RUNS asks for (`npm run test:long` does), else `usual`. */
export function runsAsked(usual = 100): number {
  const asked = Number(process.env.UNDERWRAP_RUNS)
  return Number.isInteger(asked) && asked > 0 ? asked : usual
}
