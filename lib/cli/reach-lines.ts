import { isIP } from 'node:net'
import { networkInterfaces } from 'node:os'
import { httpsAddresses } from '@/lib/server/runtime/certificate-names'
import type { Tls } from './tls-files'

const SOON_MS = 21 * 86_400_000

/**
 * What is printed at the start about how a phone on the same network reaches this server: by the names in the certificate and this machine's own addresses; where
 * the certificate does not name one, and where capture without a network is off.
 */
export function reachLines({ tls, port, url, nowMs, own = ownAddresses() }: Reach): string[] {
  if (!tls) {
    const lines = own.map((one) => `http://${one}:${port}`)
    if (url || lines.length === 0) return []
    return [
      `From a phone on this network: ${lines.join(', ')}`,
      'Without HTTPS a phone captures nothing without a network: see UNDERWRAP_TLS_CERT in README.md.',
    ]
  }
  const named = httpsAddresses(tls.names, port).filter((one) => !/^https:\/\/(localhost|127\.|\[::1\])/.test(one))
  const isWild = tls.names.dns.some((one) => one.includes('*'))
  const lines = [
    named.length > 0
      ? `From a phone on this network: ${named.join(', ')}`
      : isWild
        ? `From a phone on this network: any name that fits ${tls.names.dns.join(', ')}`
        : 'From a phone on this network: not at all, for the certificate names this machine alone. Have its name or address put in.',
  ]
  const unnamed = own.filter((one) => tls.x509.checkIP(one) === undefined)
  if (unnamed.length > 0)
    lines.push(`Not in the certificate, so a browser refuses it: ${unnamed.join(', ')}. Use a name of the list above.`)
  const host = url ? new URL(url).hostname.replace(/^\[|\]$/g, '') : null
  if (host && (isIP(host) ? tls.x509.checkIP(host) : tls.x509.checkHost(host)) === undefined)
    lines.push(
      `UNDERWRAP_URL names ${host}, which is not in the certificate: people who come straight here are refused.`,
    )
  const isSoon = tls.notAfter.getTime() - nowMs < SOON_MS
  lines.push(
    `The certificate ends at ${tls.notAfter.toISOString()}${isSoon ? ', soon' : ''}. A renewed file is taken up by itself.`,
  )
  return lines
}

type Reach = { tls: Tls | null; port: string; url: string | undefined; nowMs: number; own?: string[] }

/** This machine's addresses on its networks, loopback aside. */
function ownAddresses(): string[] {
  return Object.values(networkInterfaces())
    .flatMap((some) => some ?? [])
    .filter((one) => !one.internal && one.family === 'IPv4')
    .map((one) => one.address)
}
