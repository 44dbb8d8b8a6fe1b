/** Says on every screen of a demonstration that nothing in it is real. */
export function DemoStrip() {
  return <p className="demo-strip">Demonstration record: people, firms, batches and readings are invented.</p>
}
