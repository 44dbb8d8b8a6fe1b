/** Exact text in a box that scrolls: it takes the focus, so that a keyboard scrolls it too. */
export function ScrollText({ label, text, className }: { label: string; text: string; className: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls is reached by a keyboard only when it takes the focus
    // biome-ignore lint/a11y/useSemanticElements: exact text keeps its lines, which a section does not
    <pre role="region" aria-label={label} tabIndex={0} className={className}>
      {text}
    </pre>
  )
}
