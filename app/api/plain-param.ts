/** A part of an address as plain text; one that is not rightly percent-encoded stays as it is, and then names nothing. */
export function plainParam(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch (error) {
    if (error instanceof URIError) return part
    throw error
  }
}
