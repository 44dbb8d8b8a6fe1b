import { createHash, createPrivateKey, randomUUID } from 'node:crypto'
import { chownSync, statSync } from 'node:fs'
import { link, open, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { CertificateUnusable, type SigningIdentity, signingIdentity } from '@/lib/dossier/sign/certificate'
import { makeCertificate } from '@/lib/dossier/sign/make-certificate'
import { keyFolder } from '@/lib/server/log/key-folder'
import type { Tenant } from '@/lib/server/store/tenants'

/**
 * The certificate that this store made for an organisation, with its key; made at the first use and kept in the data folder's `keys`, readable by its owner alone.
 * Two processes that make one at once end with the same. @throws CertificateUnusable when the file is broken or the certificate has run out
 */
export async function loadOwnCertificate(dataDir: string, { id, name }: Tenant, now: Date): Promise<SigningIdentity> {
  const path = join(/*turbopackIgnore: true*/ keyFolder(dataDir), `signing-${fileNameOf(id)}.pem`)
  const text = (await readKept(path)) ?? (await makeAndKeep(path, dataDir, name, now))
  const certificate = blockOf(text, 'CERTIFICATE')
  const key = blockOf(text, 'PRIVATE KEY')
  if (!certificate || !key) throw new CertificateUnusable(`${path} does not hold a certificate and its key.`)
  return signingIdentity(certificate, createPrivateKey({ key, format: 'der', type: 'pkcs8' }), true, now)
}

async function makeAndKeep(path: string, dataDir: string, organisation: string, now: Date): Promise<string> {
  const made = await makeCertificate(organisation, now)
  const unfinished = `${path}.${randomUUID()}`
  const file = await open(/*turbopackIgnore: true*/ unfinished, 'wx', 0o600)
  try {
    await file.writeFile(`${pem('PRIVATE KEY', made.key)}${pem('CERTIFICATE', made.certificate)}`)
    await file.sync()
  } finally {
    await file.close()
  }
  const owner = statSync(/*turbopackIgnore: true*/ dataDir)
  if (process.getuid?.() === 0) chownSync(/*turbopackIgnore: true*/ unfinished, owner.uid, owner.gid)
  try {
    // a link never replaces: whoever was first made the certificate
    await link(/*turbopackIgnore: true*/ unfinished, /*turbopackIgnore: true*/ path).catch(
      (error: NodeJS.ErrnoException) => {
        if (error.code !== 'EEXIST') throw error
      },
    )
  } finally {
    await rm(/*turbopackIgnore: true*/ unfinished, { force: true })
  }
  const folder = await open(/*turbopackIgnore: true*/ keyFolder(dataDir), 'r')
  try {
    await folder.sync()
  } finally {
    await folder.close()
  }
  return readFile(/*turbopackIgnore: true*/ path, 'utf8')
}

async function readKept(path: string): Promise<string | null> {
  return readFile(/*turbopackIgnore: true*/ path, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null
    throw error
  })
}

/** An id as part of a file's name; one that is no plain word is named by its digest. */
function fileNameOf(id: string): string {
  return /^[A-Za-z0-9_-]{1,80}$/.test(id) ? id : createHash('sha256').update(id).digest('hex')
}

function pem(label: string, der: Uint8Array): string {
  const lines =
    Buffer.from(der)
      .toString('base64')
      .match(/.{1,64}/g) ?? []
  return `-----BEGIN ${label}-----\n${lines.join('\n')}\n-----END ${label}-----\n`
}

function blockOf(text: string, label: string): Buffer | null {
  const body = new RegExp(`-----BEGIN ${label}-----([A-Za-z0-9+/=\\s]+)-----END ${label}-----`).exec(text)?.[1]
  return body ? Buffer.from(body, 'base64') : null
}
