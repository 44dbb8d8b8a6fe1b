export type StructureType =
  | 'Document'
  | 'Sect'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'H4'
  | 'P'
  | 'Caption'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'

/** What a placed thing is to a reader who hears the sheet: one element of the document's structure, its parts in reading order. */
export type StructureNode = {
  type: StructureType
  parts: StructureNode[]
  /** What a figure shows. */
  alt?: string
  /** Which cells a heading cell is about. */
  scope?: 'Column' | 'Row'
  /** Where a figure is drawn: left, top, right, bottom in points from the top left. */
  boxPt?: readonly [number, number, number, number]
}

/** A new element as the last part of its parent. */
export function partOf(
  parent: StructureNode,
  type: StructureType,
  more: Pick<StructureNode, 'alt' | 'scope' | 'boxPt'> = {},
): StructureNode {
  const node: StructureNode = { type, parts: [], ...more }
  parent.parts.push(node)
  return node
}
