import { X509Certificate } from 'node:crypto'

/** Names under which browsers take a certificate: its DNS names and addresses, in its order. */
export type CertificateNames = { dns: string[]; addresses: string[] }

/** The names of the first certificate of a PEM text. @throws when it holds none that can be read */
export function certificateNames(pem: string): CertificateNames {
  const names: CertificateNames = { dns: [], addresses: [] }
  // a name with odd characters comes in quotes: no browser asks for one
  for (const part of (new X509Certificate(pem).subjectAltName ?? '').split(', ')) {
    if (part.startsWith('DNS:')) names.dns.push(part.slice('DNS:'.length).toLowerCase())
    if (part.startsWith('IP Address:')) names.addresses.push(part.slice('IP Address:'.length))
  }
  return names
}

/** The addresses that a certificate's names give at a port: DNS names first, this machine's own names last, none for a wildcard. */
export function httpsAddresses({ dns, addresses }: CertificateNames, port: string | number): string[] {
  const hosts = [
    ...dns.filter((name) => !name.includes('*')),
    ...addresses.map((one) => (one.includes(':') ? `[${one}]` : one)),
  ]
  const isOwn = (host: string) => /^(localhost|127\.|\[(::1|0:0:0:0:0:0:0:1)\])/.test(host)
  return [...hosts.filter((one) => !isOwn(one)), ...hosts.filter(isOwn)].map(
    (host) => new URL(`https://${host}:${port}`).origin,
  )
}
