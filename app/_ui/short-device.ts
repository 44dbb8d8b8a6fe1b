/** A device by its name, or by the last signs of an id that it gave itself: enough to tell a person's few devices apart. */
export function shortDevice(id: string): string {
  return id.length > 20 ? `…${id.slice(-6)}` : id
}
