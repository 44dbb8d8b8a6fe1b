/** The log cannot go on without a person: nothing is signed until it is put right. */
export class LogBroken extends Error {
  constructor(
    readonly code: 'key-missing' | 'key-wrong' | 'forked' | 'facts-missing' | 'tenant-unknown',
    message: string,
  ) {
    super(message)
    this.name = 'LogBroken'
  }
}
