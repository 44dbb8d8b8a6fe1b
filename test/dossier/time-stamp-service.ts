import { execFileSync } from 'node:child_process'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { join } from 'node:path'

/** How a service answers: as it should, or wrongly in one way. */
export type ServiceManner =
  | 'right'
  | 'status 500'
  | 'no reply'
  | 'another digest'
  | 'another nonce'
  | 'broken signature'
  | 'refusal'
  | 'other spelling'
export type TimeStampService = {
  url: string
  /** The certificate of the authority that vouches for the service, in PEM. */
  authority: string
  behave(manner: ServiceManner): void
  stop(): Promise<void>
}

const RSA_ENCRYPTION = Buffer.from('06092a864886f70d010101', 'hex')
const CONFIG = `[ req ]
distinguished_name = dn
prompt = no
[ dn ]
CN = Clock House Time Stamps
[ ca ]
basicConstraints = critical,CA:true
keyUsage = critical,keyCertSign
[ tsa ]
basicConstraints = critical,CA:false
keyUsage = critical,digitalSignature
extendedKeyUsage = critical,timeStamping
[ tsa_config ]
serial = ./serial
crypto_device = builtin
signer_cert = ./tsa.pem
certs = ./ca.pem
signer_key = ./tsa.key
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256
accuracy = secs:1
ordering = no
tsa_name = no
ess_cert_id_chain = no
ess_cert_id_alg = sha256
`

/** A time-stamp service of our own on loopback, answering with `openssl ts`; its answers also carry the authority's certificate, as many services' do. */
export async function startTimeStampService(folder: string): Promise<TimeStampService> {
  mkdirSync(folder, { recursive: true })
  const at = (name: string): string => join(folder, name)
  const openssl = (...parameters: string[]): void => {
    execFileSync('openssl', parameters, { cwd: folder, stdio: 'pipe' })
  }
  writeFileSync(at('tsa.cnf'), CONFIG)
  writeFileSync(at('serial'), '01\n')
  const key = ['-newkey', 'rsa:2048', '-nodes', '-config', 'tsa.cnf', '-days', '3650']
  openssl(
    'req',
    '-x509',
    ...key,
    '-keyout',
    'ca.key',
    '-out',
    'ca.pem',
    '-extensions',
    'ca',
    '-subj',
    '/CN=Clock House',
  )
  openssl('req', ...key.slice(0, 5), '-keyout', 'tsa.key', '-out', 'tsa.csr')
  const signing = ['-CA', 'ca.pem', '-CAkey', 'ca.key', '-CAcreateserial', '-days', '3650']
  openssl('x509', '-req', '-in', 'tsa.csr', ...signing, '-extfile', 'tsa.cnf', '-extensions', 'tsa', '-out', 'tsa.pem')
  let manner: ServiceManner = 'right'
  const reply = (query: Buffer): Buffer => {
    const changed = Buffer.from(query)
    // the imprint follows the digest algorithm; the nonce is the integer at the end before certReq
    const imprintAt = changed.indexOf(Buffer.from('0420', 'hex')) + 2
    if (manner === 'another digest') changed[imprintAt] = (changed[imprintAt] ?? 0) ^ 1
    if (manner === 'another nonce') changed[imprintAt + 40] = (changed[imprintAt + 40] ?? 0) ^ 1
    if (manner === 'refusal') changed[2 + 2] = 2
    writeFileSync(at('q.tsq'), changed)
    openssl('ts', '-reply', '-config', 'tsa.cnf', '-section', 'tsa_config', '-queryfile', 'q.tsq', '-out', 'r.tsr')
    const answer = readFileSync(at('r.tsr'))
    if (manner === 'other spelling') {
      // the last name of rsaEncryption is the signer's; sha256WithRSAEncryption is one byte away and as lawful
      const nameAt = answer.lastIndexOf(RSA_ENCRYPTION)
      if (nameAt < 0) throw new Error('no rsaEncryption in the reply')
      answer[nameAt + RSA_ENCRYPTION.length - 1] = 0x0b
    }
    if (manner === 'broken signature') answer[answer.length - 5] = (answer[answer.length - 5] ?? 0) ^ 1
    return answer
  }
  const server = createServer((request, response) => {
    const parts: Buffer[] = []
    request.on('data', (part: Buffer) => parts.push(part))
    request.on('end', () => {
      response.statusCode = manner === 'status 500' ? 500 : 200
      response.setHeader('content-type', 'application/timestamp-reply')
      response.end(manner === 'no reply' ? '<html>busy</html>' : reply(Buffer.concat(parts)))
    })
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const address = server.address()
  if (typeof address !== 'object' || !address) throw new Error('no port')
  return {
    url: `http://127.0.0.1:${address.port}/`,
    authority: at('ca.pem'),
    behave(next) {
      manner = next
    },
    stop: () => new Promise((done) => server.close(() => done())),
  }
}
