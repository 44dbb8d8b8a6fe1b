import { say } from './say'
import { subCommands } from './sub-commands'

/** `help`: what there is. */
export async function runHelp(): Promise<void> {
  const commands = Object.values(subCommands)
  const width = Math.max(...commands.map((one) => one.usage.length))
  await say(
    ['npm run underwrap -- COMMAND', '', ...commands.map((one) => `  ${one.usage.padEnd(width)}  ${one.about}`)].join(
      '\n',
    ),
  )
}
