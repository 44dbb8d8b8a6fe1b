/** A camera that a component holds; `isGone` once the component is. */
export type HeldCamera = { isGone: boolean; stream: MediaStream | null }

/** Ask for the camera that looks away from its holder, at about this size. Answers why not, in one word, or null once the stream is held. */
export async function openCamera(
  held: HeldCamera,
  idealPx: { width: number; height: number },
): Promise<'not secure' | 'not allowed' | 'no camera' | null> {
  if (!navigator.mediaDevices?.getUserMedia) return 'not secure'
  try {
    held.stream = await navigator.mediaDevices.getUserMedia({
      video: { facingMode: 'environment', width: { ideal: idealPx.width }, height: { ideal: idealPx.height } },
    })
  } catch (cause) {
    if (!(cause instanceof DOMException)) throw cause
    return cause.name === 'NotAllowedError' ? 'not allowed' : 'no camera'
  }
  return null
}

/** Let the camera go. */
export function closeCamera(held: HeldCamera): void {
  held.isGone = true
  for (const track of held.stream?.getTracks() ?? []) track.stop()
}
