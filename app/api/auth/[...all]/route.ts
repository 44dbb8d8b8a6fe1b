import { loadRuntime } from '@/lib/server/runtime/runtime'

/**
 * The few paths of the sign-in library that are open: accounts and organisations are made by our own use cases only, and a session's token is not told
 * to scripts.
 */
const OPEN = new Set(['POST /api/auth/sign-in/email', 'POST /api/auth/sign-out'])

async function pass(request: Request): Promise<Response> {
  const path = new URL(request.url).pathname.replace(/\/+$/, '')
  if (!OPEN.has(`${request.method} ${path}`))
    return Response.json({ ok: false, error: { code: 'not-found' } }, { status: 404 })
  const { auth } = await loadRuntime()
  return auth.handler(request)
}

export { pass as GET, pass as POST }
