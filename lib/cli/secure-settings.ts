import { PlainError } from './plain-error'
import type { WebServing } from './run-web-server'
import { readTls, tlsFilesOf } from './tls-files'

/** What the settings say about serving TLS; null when no certificate is given. @throws PlainError when they do not agree, or as readTls does */
export function secureSettingsOf(env: NodeJS.ProcessEnv): WebServing['secure'] {
  const files = tlsFilesOf(env)
  const plain = env.UNDERWRAP_HTTP_PORT
  if (!files && plain)
    throw new PlainError(
      'UNDERWRAP_HTTP_PORT sends people to HTTPS, but no certificate is given: set UNDERWRAP_TLS_CERT and UNDERWRAP_TLS_KEY too, or leave it out.',
    )
  if (!files) return null
  const plainPort = plain ? Number(plain) : null
  if (plainPort !== null && !(Number.isInteger(plainPort) && plainPort > 0 && plainPort < 65_536))
    throw new PlainError(`UNDERWRAP_HTTP_PORT is ${plain}: a port is a whole number from 1 to 65535.`)
  return { files, tls: readTls(files, Date.now()), plainPort }
}
