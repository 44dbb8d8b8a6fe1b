import { createServer, type IncomingMessage, request } from 'node:http'
import { listen } from './serve-outbox'

export type Losses = { dropped: number; cut: number; repliesLost: number; passed: number }

/**
 * A proxy that loses what a bad network loses: three requests in ten never arrive, one upload in six is cut in its middle, one reply in eight is lost after the server did its work.
 * @param seed the same seed loses the same
 */
export async function openLossyProxy(target: string, seed: number) {
  const losses: Losses = { dropped: 0, cut: 0, repliesLost: 0, passed: 0 }
  let state = seed
  const chance = () => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648
    return state / 2_147_483_648
  }
  const server = createServer(async (incoming, outgoing) => {
    const { socket } = incoming
    const body = await bodyOf(incoming)
    if (chance() < 0.3) {
      losses.dropped += 1
      return socket.destroy()
    }
    const onward = request(target + incoming.url, { method: incoming.method, headers: incoming.headers })
    onward.on('error', () => socket.destroy())
    if (body.length > 0 && chance() < 1 / 6) {
      losses.cut += 1
      onward.write(body.subarray(0, Math.floor(body.length / 2)), () => {
        setTimeout(() => onward.destroy(), 2)
        socket.destroy()
      })
      return
    }
    const isReplyLost = chance() < 1 / 8
    onward.on('response', async (reply) => {
      const text = await bodyOf(reply)
      if (isReplyLost) {
        losses.repliesLost += 1
        return socket.destroy()
      }
      losses.passed += 1
      outgoing.writeHead(reply.statusCode ?? 500, reply.headers)
      outgoing.end(text)
    })
    onward.end(body)
  })
  return { ...(await listen(server)), losses }
}

async function bodyOf(incoming: IncomingMessage): Promise<Buffer> {
  const parts: Buffer[] = []
  for await (const part of incoming) parts.push(part as Buffer)
  return Buffer.concat(parts)
}
