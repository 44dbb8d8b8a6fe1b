import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'

/** Programs of others that judge our files. A test that needs one that is missing is skipped by name. */
const PROGRAMS = ['pdfsig', 'qpdf', 'openssl', 'pdfinfo', 'pdftoppm', 'pdfdetach', 'java', '/usr/bin/python3'] as const
export type OutsideProgram = (typeof PROGRAMS)[number]

const JARS = [
  'preflight',
  'pdfbox2',
  'fontbox2',
  'xmpbox',
  'commons-logging',
  'commons-io',
  'javax.activation',
  'jaxb-api',
].map((name) => `/usr/share/java/${name}.jar`)

const found = new Map<string, boolean>()

/** Whether a program is installed. */
export function hasProgram(name: OutsideProgram): boolean {
  const known = found.get(name)
  if (known !== undefined) return known
  const isThere = spawnSync('sh', ['-c', `command -v ${name}`]).status === 0
  if (!isThere) console.warn(`Skipped: no ${name} on this machine`)
  found.set(name, isThere)
  return isThere
}

/** Whether Debian's PDFBox Preflight is installed, with a Java to run it. */
export const hasPreflight = hasProgram('java') && JARS.every((jar) => existsSync(jar))

/** Whether the Debian package python3-pikepdf is installed. */
export const hasPikepdf =
  hasProgram('/usr/bin/python3') && spawnSync('/usr/bin/python3', ['-c', 'import pikepdf']).status === 0

/** Run a program to its end. Output is both of its streams. */
export function runOutside(name: OutsideProgram, parameters: readonly string[]): { status: number; output: string } {
  const ran = spawnSync(name, parameters, { encoding: 'utf8', maxBuffer: 1 << 26 })
  return { status: ran.status ?? -1, output: `${ran.stdout}${ran.stderr}` }
}

/** What PDFBox Preflight says of a file as PDF/A-1b. */
export function runPreflight(path: string): { status: number; output: string } {
  return runOutside('java', ['-cp', JARS.join(':'), 'org.apache.pdfbox.preflight.Validator_A1b', path])
}
