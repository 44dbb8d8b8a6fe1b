import type { StreamId } from '@/lib/domain/facts/fact'
import type { ReadingDesk } from '@/lib/server/views/reading-desk'
import { loadRepairStates } from '@/lib/server/views/repair-list-view'

/** Splits what a trace found into what the reader may read and how much he may not. */
export async function onlyReadable<L extends { repair: StreamId }>(
  reading: ReadingDesk,
  lines: readonly L[],
): Promise<{ shown: L[]; hiddenCount: number }> {
  const readable = new Set((await loadRepairStates(reading)).map((state) => state.stream))
  const shown = lines.filter((line) => readable.has(line.repair))
  return { shown, hiddenCount: lines.length - shown.length }
}
