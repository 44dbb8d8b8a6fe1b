import { lineOf, PlainError } from './plain-error'
import { subCommands } from './sub-commands'

/** The `underwrap` command: its answer on standard output; exit code 1 and one line on standard error when it cannot. */
const [name = 'help', ...parameters] = process.argv.slice(2)
try {
  const command = Object.hasOwn(subCommands, name) ? subCommands[name] : undefined
  if (!command) throw new PlainError(`There is no command ${name}: see npm run underwrap -- help`)
  const run = await command.load()
  await run(parameters)
} catch (cause) {
  process.stderr.write(`underwrap: ${lineOf(cause)}\n`)
  process.exitCode = 1
}
