/** Where a holder of a dossier can have it checked: the page `/check` of this server, as people reach it (`UNDERWRAP_URL`, else this machine at `PORT`). */
export function checkAddress(): string {
  const base = process.env.UNDERWRAP_URL || `http://localhost:${process.env.PORT || 3000}`
  return `${base.replace(/\/+$/, '')}/check`
}
