export default function WorkLoading() {
  return (
    <main className="page" id="main" aria-busy="true">
      <p className="quiet" role="status">
        Reading the record
      </p>
    </main>
  )
}
