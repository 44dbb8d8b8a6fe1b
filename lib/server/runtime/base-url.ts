import { readFileSync } from 'node:fs'
import { certificateNames, httpsAddresses } from './certificate-names'

/**
 * Where people reach this server: `UNDERWRAP_URL`; else, with a certificate, the first name in it at `PORT`; else this machine at `PORT`. Cookies are secure
 * when it is https.
 */
export function baseUrl(): string {
  const [first] = certified()
  return process.env.UNDERWRAP_URL || first || `http://localhost:${port()}`
}

/** Every origin from which a sign-in is taken: the base address, and with a certificate each name in it. */
export function trustedOrigins(): string[] {
  return [...new Set([new URL(baseUrl()).origin, ...certified()])]
}

/** Addresses by the names of the certificate that this server serves with; none without one. A file that cannot be read is told at the start. */
function certified(): string[] {
  const file = process.env.UNDERWRAP_TLS_CERT
  if (!file) return []
  try {
    return httpsAddresses(certificateNames(readFileSync(/*turbopackIgnore: true*/ file, 'utf8')), port())
  } catch {
    return []
  }
}

/** The port that people reach: under a front of our own the app itself listens on another one. */
function port(): string {
  return process.env.UNDERWRAP_PUBLIC_PORT || process.env.PORT || '3000'
}
