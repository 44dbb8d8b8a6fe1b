import { randomBytes } from 'node:crypto'
import { mkdir, open, readFile } from 'node:fs/promises'
import { join } from 'node:path'

/**
 * The secret that signs session cookies: made once, kept owner-only in the data folder, read ever after.
 * @throws Error when the folder cannot be written, or the file holds less than 32 bytes of text
 */
export async function loadSecret(dataFolder: string): Promise<string> {
  const path = join(/* turbopackIgnore: true */ dataFolder, 'session-secret')
  await mkdir(dataFolder, { recursive: true })
  try {
    const file = await open(path, 'wx', 0o600)
    try {
      await file.writeFile(randomBytes(48).toString('base64url'))
      await file.sync()
    } finally {
      await file.close()
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST')
      throw new Error('The session secret cannot be kept in the data folder', { cause: error })
  }
  return settled(path)
}

async function settled(path: string): Promise<string> {
  for (let tries = 0; tries < 20; tries += 1) {
    const secret = await readFile(path, 'utf8')
    if (secret.length >= 32) return secret
    await new Promise((resume) => setTimeout(resume, 50))
  }
  throw new Error('The session secret in the data folder is too short; remove the file to have a new one made')
}
