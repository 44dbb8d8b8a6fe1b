'use client'
import { useEffect, useState } from 'react'
import type { DeviceUser } from '@/app/_capture/follow-device'
import type { OutboxStatus } from '@/lib/capture/outbox/outbox-terms'
import { OutboxLine } from './outbox-line'

type Followed = { status: OutboxStatus; nowMs: () => number }

/** In the bar of every page: what this device has not sent yet. Its program is loaded behind the page, which does not wait for it. */
export function OutboxStatusLine({ user }: { user: DeviceUser }) {
  const { tenant, person, name, clockKind } = user
  const [followed, setFollowed] = useState<Followed | null>(null)
  const [isSecure, setSecure] = useState(true)
  useEffect(() => {
    let [isGone, stop] = [false, null as (() => void) | null]
    const follow = async () => {
      setSecure(window.isSecureContext)
      if (!window.isSecureContext) return
      const [{ followDevice }, { pageNowMs }] = await Promise.all([
        import('@/app/_capture/follow-device'),
        import('@/app/_capture/page-outbox'),
      ])
      const stopIt = await followDevice({ tenant, person, name, clockKind }, (status) => {
        if (!isGone) setFollowed({ status, nowMs: pageNowMs })
      })
      if (isGone) stopIt()
      else stop = stopIt
    }
    void follow()
    return () => {
      isGone = true
      stop?.()
    }
  }, [tenant, person, name, clockKind])
  if (!isSecure)
    return (
      <p className="outbox-line">
        No capture without a network here: a browser keeps it only for a site on HTTPS, and this address is not.
      </p>
    )
  return followed ? <OutboxLine {...followed} /> : null
}
