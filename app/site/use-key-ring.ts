'use client'
import { useCallback, useEffect, useState } from 'react'
import { type KeyRing, openKeyRing } from '@/lib/capture/signing/key-ring'
import type { KeyHere } from '@/lib/capture/signing/signers-here'

/** `none`: this browser keeps no keys, or the address is not secure. */
export type KeysHere = { ring: KeyRing | 'opening' | 'none'; keys: KeyHere[]; refresh(): Promise<void> }

/** The keys that sign on this device, of a tenant's persons. */
export function useKeyRing(tenant: string): KeysHere {
  const [ring, setRing] = useState<KeyRing | 'opening' | 'none'>('opening')
  const [keys, setKeys] = useState<KeyHere[]>([])
  useEffect(() => {
    let isGone = false
    let opened: KeyRing | null = null
    void (async () => {
      opened = await openKeyRing()
      const found = (await opened?.signers(tenant)) ?? []
      if (isGone) return opened?.close()
      setKeys(found)
      setRing(opened ?? 'none')
    })()
    return () => {
      isGone = true
      opened?.close()
    }
  }, [tenant])
  const refresh = useCallback(async () => {
    if (typeof ring === 'object') setKeys(await ring.signers(tenant))
  }, [ring, tenant])
  return { ring, keys, refresh }
}
