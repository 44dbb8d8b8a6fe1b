import Link from 'next/link'

export default function WorkNotFound() {
  return (
    <main className="page narrow" id="main">
      <div className="empty">
        <strong>It is not in your record.</strong>
        <span>The number may be mistyped, or it is not yours to read.</span>
        <Link className="button" href="/repairs">
          To the repairs
        </Link>
      </div>
    </main>
  )
}
