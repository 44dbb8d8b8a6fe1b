/**
 * One line of a CSV file, ended by CR LF: cells with a comma, quote or line break are quoted. A text that a spreadsheet would take for a formula gets an
 * apostrophe in front; a plain number does not. @source RFC 4180
 */
export function csvLine(cells: readonly (string | number | null)[]): string {
  return `${cells.map(cellOf).join(',')}\r\n`
}

function cellOf(value: string | number | null): string {
  if (value === null) return ''
  const text = String(value)
  const isFormula = /^[=+\-@\t\r]/.test(text) && !/^[+-]?\d+(\.\d+)?$/.test(text)
  const plain = isFormula ? `'${text}` : text
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain
}
