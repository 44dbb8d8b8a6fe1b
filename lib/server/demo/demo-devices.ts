import { AU, E, K, L1, QI, QJ, S, T1, T2 } from './demo-people'

/** Devices of the demo by their id, with who holds them. */
export const DEMO_DEVICES = {
  'phone-akande': { title: 'Phone in pouch, D. Akande', holder: T1 },
  'phone-lindmarsh': { title: 'Phone in pouch, P. Lindmarsh', holder: T2 },
  'tablet-osterfalk': { title: 'Tablet, M. Osterfalk', holder: L1 },
  'tablet-wrenfield': { title: 'Tablet, T. Wrenfield', holder: QI },
  'desk-inspection': { title: 'Desk, inspection body', holder: QJ },
  'phone-stannard': { title: 'Phone, L. Stannard', holder: K },
  'desk-design': { title: 'Desk, calculation house', holder: E },
  'scanner-stores': { title: 'Scanner and desk, stores', holder: S },
  'desk-audit': { title: 'Desk, audit', holder: AU },
} as const
export type DemoDevice = keyof typeof DEMO_DEVICES

/** The device a person of the demo keys on, with its clock error at last contact; persons without one use the inspection body's desk. */
export function deviceOf(person: string): { id: DemoDevice; clockOffsetMs: number } {
  const found = Object.entries(DEMO_DEVICES).find(([, device]) => device.holder === person)
  return { id: (found?.[0] ?? 'desk-inspection') as DemoDevice, clockOffsetMs: 0 }
}
