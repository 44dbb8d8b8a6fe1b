import type { Room } from '@/lib/capture/outbox/device-storage'

/** Said before anything is captured: when this device may lose what it keeps, or has little room left. Nothing when it keeps well; in few words where `isBrief`. */
export function RoomNote({ room, isBrief = false }: { room: Room; isBrief?: boolean }) {
  const free = room.freeBytes === null ? '' : ` ${Math.floor(room.freeBytes / 1_000_000)} MB are free.`
  return (
    <>
      {room.space === 'full' ? (
        <p className="note refused" role="alert">
          <strong>The storage of this device is full: nothing can be captured.</strong>
          <span>Free some storage, or send what waits.{free}</span>
        </p>
      ) : room.space === 'nearly full' ? (
        <p className="note warn">
          <strong>The storage of this device is nearly full.</strong>
          <span>Capture stops before anything is lost.{free}</span>
        </p>
      ) : null}
      {room.keeping === 'until this page closes' ? (
        <p className="note refused" role="alert">
          <strong>This browser keeps nothing once the page closes.</strong>
          <span>Do not capture here without a network: use an ordinary window.</span>
        </p>
      ) : room.keeping === 'may be cleared' && isBrief ? (
        <p className="quiet small">This browser may clear what it keeps when it runs short of storage: send soon.</p>
      ) : room.keeping === 'may be cleared' ? (
        <p className="note warn">
          <strong>This browser may clear what it keeps when it runs short of storage.</strong>
          <span>Add Underwrap to the home screen, and send what waits as soon as there is a network.</span>
        </p>
      ) : null}
    </>
  )
}
