/** An address that leads nowhere. A plain link: this stands in every page, and the router's own would be loaded with each. */
export default function NotFound() {
  return (
    <main className="page narrow" id="main">
      <div className="empty">
        <h1>No screen is here.</h1>
        <span>The address may be mistyped or cut short.</span>
        <a className="button" href="/waiting">
          To what waits for you
        </a>
      </div>
    </main>
  )
}
