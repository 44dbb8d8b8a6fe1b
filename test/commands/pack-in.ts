import type { Result } from '@/lib/domain/result'

/** The pack in the bytes that a command opened, as a device reads it. @throws Error when it was refused, or cannot be read */
export function packIn<Pack>(
  opened: Result<{ bytes: Uint8Array }, { code: string }>,
  parse: (value: unknown) => Result<Pack, { code: string }>,
): Pack {
  if (!opened.ok) throw new Error(opened.error.code)
  const pack = parse(JSON.parse(new TextDecoder().decode(opened.value.bytes)))
  if (!pack.ok) throw new Error(JSON.stringify(pack.error))
  return pack.value
}
