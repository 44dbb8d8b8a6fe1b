/** Write an answer, waiting until standard output has taken it. */
export function say(text: string): Promise<void> {
  return new Promise((settle, fail) =>
    process.stdout.write(text.endsWith('\n') ? text : `${text}\n`, (error) => (error ? fail(error) : settle())),
  )
}
