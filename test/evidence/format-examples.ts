import { readFileSync } from 'node:fs'
import { join } from 'node:path'

const text = readFileSync(join(process.cwd(), 'lib/evidence/FORMAT.md'), 'utf8')

/** A worked example of FORMAT.md by its label. @throws Error when there is no such block */
export function example(label: string): string {
  const [, body] = new RegExp(`\`\`\`[a-z]+ ${label}\n([\\s\\S]*?)\n\`\`\`\n`).exec(text) ?? []
  if (body === undefined) throw new Error(`FORMAT.md has no example ${label}`)
  return body
}

/** Its lines as bytes. */
export function exampleLines(label: string): Uint8Array[] {
  return example(label)
    .split('\n')
    .map((line) => new TextEncoder().encode(line))
}

/** A checkpoint of the examples: it ends with a line break. */
export function exampleCheckpoint(label: string): string {
  return `${example(label)}\n`
}
