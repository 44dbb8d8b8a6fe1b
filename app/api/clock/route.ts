import { done } from '@/lib/domain/result'
import { loadRuntime } from '@/lib/server/runtime/runtime'
import { answer } from '../answer'

/** The present moment of the store, for pages of a demo or test store: `{ now }`. */
export function GET(): Promise<Response> {
  return answer(async () => {
    const { store } = await loadRuntime()
    return Response.json({ ...done(null), now: store.now() }, { headers: { 'cache-control': 'private, no-store' } })
  })
}
