/** Do one thing at a time over all windows of this browser; at once where it has no locks. */
export function alone<T>(name: string, work: () => Promise<T>): Promise<T> {
  return navigator.locks ? navigator.locks.request(name, work) : work()
}
