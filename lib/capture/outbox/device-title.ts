const BROWSERS = [
  [/\bEdgA?\//, 'Edge'],
  [/\bOPR\//, 'Opera'],
  [/\b(Firefox|FxiOS)\//, 'Firefox'],
  [/\b(Chrome|CriOS)\//, 'Chrome'],
  [/\bSafari\//, 'Safari'],
] as const
const PLATFORMS = [
  [/\biPhone\b/, 'iPhone'],
  [/\biPad\b/, 'iPad'],
  [/\bAndroid\b.*\bMobile\b/, 'Android phone'],
  [/\bAndroid\b/, 'Android tablet'],
  [/\bWindows\b/, 'Windows computer'],
  [/\bCrOS\b/, 'Chromebook'],
  [/\bMac OS X\b/, 'Mac'],
  [/\bLinux\b/, 'Linux computer'],
] as const

/** A device's name as a person recognises it, from what its browser says of itself, with the end of its id, for two alike: `Chrome on an Android phone, 3f2a`. */
export function deviceTitle(userAgent: string, deviceId: string): string {
  const find = (table: readonly (readonly [RegExp, string])[]) => table.find(([sign]) => sign.test(userAgent))?.[1]
  const platform = find(PLATFORMS)
  const named = platform ? `${/^[AIi]/.test(platform) ? 'an' : 'a'} ${platform}` : 'an unknown device'
  return `${find(BROWSERS) ?? 'A browser'} on ${named}, ${deviceId.slice(-4)}`
}
