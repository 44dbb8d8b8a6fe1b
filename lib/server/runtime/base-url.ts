/** Where people reach this server: `UNDERWRAP_URL`, else this machine at `PORT`. Cookies are secure when it is https. */
export function baseUrl(): string {
  return process.env.UNDERWRAP_URL || `http://localhost:${process.env.PORT || 3000}`
}
