export type GlyphName = 'pass' | 'fail' | 'not proven' | 'question' | 'lapsed' | 'open' | 'closed' | 'hold'

/** Shapes that tell a state without colour: disc, diamond, barred ring, broken ring, open clock, ring, dash, square. */
export function Glyph({ name }: { name: GlyphName }) {
  return (
    <svg viewBox="0 0 18 18" aria-hidden="true" focusable="false">
      {SHAPES[name]}
    </svg>
  )
}

const line = { fill: 'none', stroke: 'currentColor', strokeWidth: 2.2, strokeLinecap: 'round' as const }
const SHAPES: Record<GlyphName, React.ReactNode> = {
  pass: (
    <>
      <circle cx="9" cy="9" r="9" fill="currentColor" />
      <path d="M4.8 9.3l2.9 3 5.6-6" {...line} stroke="var(--sheet)" />
    </>
  ),
  fail: (
    <>
      <path d="M9 0l9 9-9 9-9-9z" fill="currentColor" />
      <path d="M6.2 6.2l5.6 5.6M11.8 6.2l-5.6 5.6" {...line} stroke="var(--sheet)" />
    </>
  ),
  'not proven': (
    <>
      <circle cx="9" cy="9" r="7.6" {...line} />
      <path d="M3.8 9h10.4" {...line} />
    </>
  ),
  question: (
    <>
      <circle cx="9" cy="9" r="7.6" {...line} strokeDasharray="3.2 3" />
      <path d="M9 5v4.6M9 12.6v.2" {...line} />
    </>
  ),
  lapsed: (
    <>
      <path d="M14.4 3.6A7.6 7.6 0 1 0 16.6 9" {...line} />
      <path d="M9 4.8V9l3 2" {...line} />
    </>
  ),
  open: <circle cx="9" cy="9" r="7" {...line} />,
  closed: <path d="M3 9h12" {...line} />,
  hold: <rect x="2.5" y="2.5" width="13" height="13" {...line} />,
}
