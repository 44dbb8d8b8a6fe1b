import Link from 'next/link'
import { notFound } from 'next/navigation'
import type { ComponentProps } from 'react'
import { LabelPrint } from './label-print'

/** The page that prints the label of a batch, an instrument or a repair; `content` null is not-found. */
export function LabelPage({
  content,
  href,
}: {
  content: ComponentProps<typeof LabelPrint>['content'] | null
  href: string
}) {
  if (!content) notFound()
  return (
    <main className="page narrow stack label-page" id="main">
      <div className="page-head no-print">
        <div>
          <p className="eyebrow">
            <Link href={href}>{content.title}</Link>
          </p>
          <h1>Label</h1>
        </div>
      </div>
      <LabelPrint content={content} />
    </main>
  )
}
