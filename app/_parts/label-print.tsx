'use client'
import { useEffect, useState } from 'react'
import type { LabelContent } from '@/lib/domain/labels/label-content'
import { type DrawnSymbol, drawSymbol, type LabelSymbol } from './label-drawing'
import { LabelFace } from './label-face'
import { type LabelSize, labelSizeOf, SIZES_TO_CHOOSE } from './label-size'

/** Prints one label: its size is asked for in mm, its symbol drawn here, and nothing but the label goes to the printer. */
export function LabelPrint({ content }: { content: LabelContent }) {
  const [keyed, setKeyed] = useState({ width: '', height: '' })
  const [format, setFormat] = useState<LabelSymbol>('DataMatrix')
  const [drawn, setDrawn] = useState<{ format: LabelSymbol; symbol: DrawnSymbol | null } | null>(null)
  const [isLost, setLost] = useState(false)
  const size = labelSizeOf(keyed.width, keyed.height)
  const { text, isGs1 } = content.symbol
  useEffect(() => {
    let isGone = false
    drawSymbol({ text, isGs1 }, format).then(
      (symbol) => !isGone && setDrawn({ format, symbol }),
      () => !isGone && setLost(true),
    )
    return () => {
      isGone = true
    }
  }, [text, isGs1, format])
  const symbol = drawn?.format === format ? drawn.symbol : null
  return (
    <>
      <section className="sheet stack tight no-print" aria-label="Size and symbol">
        <SizeFields keyed={keyed} change={setKeyed} />
        <fieldset className="field">
          <legend className="label">Symbol</legend>
          <div className="choice">
            {(['DataMatrix', 'QRCode'] as const).map((one) => (
              <label key={one}>
                <input type="radio" name="symbol" checked={format === one} onChange={() => setFormat(one)} />
                {one === 'DataMatrix' ? 'Data Matrix' : 'QR'}
              </label>
            ))}
          </div>
        </fieldset>
        <p className="quiet small">
          {isGs1
            ? 'GS1 fields, as printed below the title.'
            : 'No GS1 number is known for it, or GS1 cannot hold it: the code carries our own number.'}
        </p>
        {isLost ? (
          <p className="note refused" role="alert">
            <strong>The symbol could not be drawn.</strong> Its program did not load: look for the connection and load
            the page again.
          </p>
        ) : null}
        {drawn && drawn.format === format && symbol === null ? (
          <p className="note refused" role="alert">
            <strong>The number does not fit this symbol.</strong> Choose the other one.
          </p>
        ) : null}
      </section>
      {size && symbol ? <Preview content={content} symbol={symbol} size={size} /> : null}
    </>
  )
}

function Preview({ content, symbol, size }: { content: LabelContent; symbol: DrawnSymbol; size: LabelSize }) {
  return (
    <section className="stack tight" aria-label="The label">
      <style>{`@page { size: ${size.widthMm}mm ${size.heightMm}mm; margin: 0 }`}</style>
      <div className="label-scroll">
        <LabelFace content={content} symbol={symbol} size={size} />
      </div>
      <p className="quiet small no-print">
        Drawn at {size.widthMm} × {size.heightMm} mm. Print at 100 %, without margins or headers, then read one back
        with Scan.
      </p>
      <div className="no-print">
        <button type="button" className="button" onClick={() => window.print()}>
          Print
        </button>
      </div>
    </section>
  )
}

function SizeFields({
  keyed,
  change,
}: {
  keyed: { width: string; height: string }
  change: (next: { width: string; height: string }) => void
}) {
  return (
    <fieldset className="field">
      <legend className="label">Size of the label</legend>
      <span className="hint">As your printer holds it, in mm</span>
      <div className="row">
        {(['width', 'height'] as const).map((side) => (
          <label key={side} className="label-side">
            {side === 'width' ? 'Width, mm' : 'Height, mm'}
            <input
              inputMode="decimal"
              autoComplete="off"
              value={keyed[side]}
              onChange={(event) => change({ ...keyed, [side]: event.target.value })}
            />
          </label>
        ))}
      </div>
      <fieldset className="label-sizes" aria-label="Common sizes">
        {SIZES_TO_CHOOSE.map(([width, height]) => (
          <button
            key={`${width}x${height}`}
            type="button"
            className="button plain"
            onClick={() => change({ width, height })}
          >
            {width} × {height}
          </button>
        ))}
      </fieldset>
      {(keyed.width !== '' || keyed.height !== '') && labelSizeOf(keyed.width, keyed.height) === null ? (
        <span className="wrong" role="alert">
          Key both sides as millimetres from 20 to 300, such as 70 and 37.5.
        </span>
      ) : null}
    </fieldset>
  )
}
