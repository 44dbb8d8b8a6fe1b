import Link from 'next/link'

/** An address that leads nowhere. */
export default function NotFound() {
  return (
    <main className="page narrow" id="main">
      <div className="empty">
        <h1>No screen is here.</h1>
        <span>The address may be mistyped or cut short.</span>
        <Link className="button" href="/waiting">
          To what waits for you
        </Link>
      </div>
    </main>
  )
}
