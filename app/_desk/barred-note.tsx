/** A page that the reader's role does not open: said plainly, with who may. */
export function BarredNote({ title, forWhom }: { title: string; forWhom: string }) {
  return (
    <main className="page narrow" id="main">
      <div className="page-head">
        <h1>{title}</h1>
      </div>
      <div className="note refused" role="status">
        <strong>Your role does not read this.</strong>
        <span>It is for: {forWhom}. Roles are granted per project and day by an administrator.</span>
      </div>
    </main>
  )
}
