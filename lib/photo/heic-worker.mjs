// Decodes one HEIC photo in a thread of its own and ends. The decoder turns the picture upright as the file's `irot`
// and `imir` say; HEIF readers ignore the EXIF orientation, and so must whoever takes these pixels.
import { parentPort, workerData } from 'node:worker_threads'
import decodeHeic from 'heic-decode'

const { bytes, maxPixels } = workerData

async function decodeFirstPicture() {
  const pictures = await decodeHeic.all({ buffer: bytes })
  const { width: widthPx, height: heightPx } = pictures[0]
  if (!(widthPx > 0 && heightPx > 0)) return { code: 'damaged', reason: 'the picture has no size' }
  // the coded picture may be larger than the header said
  if (widthPx * heightPx > maxPixels) return { code: 'too-many-pixels', widthPx, heightPx, maxPixels }
  const { data } = await pictures[0].decode()
  return { code: 'decoded', pixels: new Uint8Array(data.buffer, data.byteOffset, data.length), widthPx, heightPx }
}

try {
  const outcome = await decodeFirstPicture()
  parentPort.postMessage(outcome, outcome.code === 'decoded' ? [outcome.pixels.buffer] : [])
} catch (error) {
  parentPort.postMessage({ code: 'damaged', reason: String(error?.message ?? error) })
}
