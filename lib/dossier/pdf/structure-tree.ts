import { type PDFContext, PDFHexString, type PDFRef } from 'pdf-lib'
import type { StructureNode } from '../layout/structure'
import type { ReadyObject } from './object-bytes'

type Mark = { page: number; number: number }

/** The structure of a document: which element each marked part of a page belongs to. Elements are written straight as bytes: a long dossier has tens of thousands. */
export class StructureTree {
  private readonly marks = new Map<StructureNode, Mark[]>()
  private readonly pages: StructureNode[][] = []

  constructor(
    private readonly context: PDFContext,
    private readonly parts: readonly StructureNode[],
    private readonly sheetHeightPt: number,
  ) {}

  /** Number on a page of a part that belongs to an element. */
  markOn(page: number, element: StructureNode): number {
    const onPage = this.pages[page] ?? []
    this.pages[page] = onPage
    onPage.push(element)
    const own = this.marks.get(element) ?? []
    own.push({ page, number: onPage.length - 1 })
    this.marks.set(element, own)
    return onPage.length - 1
  }

  /**
   * The tree's objects under fresh numbers, and its root for the catalog.
   * @param field a form field that belongs to the tree, under the number that follows the pages
   */
  write(pages: readonly PDFRef[], field: PDFRef | null): { root: PDFRef; objects: Iterable<ReadyObject> } {
    const root = this.context.nextRef()
    const top = this.context.nextRef()
    const parents = this.context.nextRef()
    const refs = new Map<StructureNode, PDFRef>()
    const number = (node: StructureNode): void => {
      refs.set(node, this.context.nextRef())
      node.parts.forEach(number)
    }
    this.parts.forEach(number)
    const form = field && this.context.nextRef()
    const refOf = (node: StructureNode): PDFRef => {
      const ref = refs.get(node)
      if (!ref) throw new Error(`An element ${node.type} is drawn but stands in no section`)
      return ref
    }
    return { root, objects: this.objects({ root, top, parents, form, field, pages, refOf }) }
  }

  private *objects(at: {
    root: PDFRef
    top: PDFRef
    parents: PDFRef
    form: PDFRef | null
    field: PDFRef | null
    pages: readonly PDFRef[]
    refOf: (node: StructureNode) => PDFRef
  }): Iterable<ReadyObject> {
    const { root, top, parents, form, field, pages, refOf } = at
    const tree = at.pages.map((_, page) => `${page} [${(this.pages[page] ?? []).map(refOf).join(' ')}]`)
    const fields = form ? [`${pages.length} ${form}`] : []
    yield {
      objectNo: root.objectNumber,
      value: `<</Type/StructTreeRoot/K ${top}/ParentTree ${parents}/ParentTreeNextKey ${pages.length + fields.length}>>`,
    }
    yield { objectNo: parents.objectNumber, value: `<</Nums [${[...tree, ...fields].join('\n')}]>>` }
    const kids = [...this.parts.map(refOf), ...(form ? [form] : [])]
    yield { objectNo: top.objectNumber, value: `<</Type/StructElem/S/Document/P ${root}/K [${kids.join(' ')}]>>` }
    if (form && field)
      yield {
        objectNo: form.objectNumber,
        value: `<</Type/StructElem/S/Form/P ${top}/K <</Type/OBJR/Pg ${pages[0]}/Obj ${field}>>>>`,
      }
    yield* this.elements(this.parts, top, pages, refOf)
  }

  private *elements(
    nodes: readonly StructureNode[],
    parent: PDFRef,
    pages: readonly PDFRef[],
    refOf: (node: StructureNode) => PDFRef,
  ): Iterable<ReadyObject> {
    for (const node of nodes) {
      const ref = refOf(node)
      const marks = this.marks.get(node) ?? []
      const page = marks[0]?.page
      const kids = [
        ...node.parts.map((one) => String(refOf(one))),
        ...marks.map((one) =>
          one.page === page ? String(one.number) : `<</Type/MCR/Pg ${pages[one.page]}/MCID ${one.number}>>`,
        ),
      ]
      const at = page === undefined ? '' : `/Pg ${pages[page]}`
      const parts = kids.length === 0 ? '' : kids.length === 1 ? `/K ${kids[0]}` : `/K [${kids.join(' ')}]`
      yield {
        objectNo: ref.objectNumber,
        value: `<</Type/StructElem/S/${node.type}/P ${parent}${at}${this.attributesOf(node)}${parts}>>`,
      }
      yield* this.elements(node.parts, ref, pages, refOf)
    }
  }

  private attributesOf({ alt, scope, boxPt }: StructureNode): string {
    const spoken = alt === undefined ? '' : `/Alt ${PDFHexString.fromText(alt)}`
    if (scope) return `${spoken}/A <</O/Table/Scope/${scope}>>`
    if (!boxPt) return spoken
    const [left, top, right, bottom] = boxPt
    const box = [left, this.sheetHeightPt - bottom, right, this.sheetHeightPt - top].map(
      (one) => Math.round(one * 100) / 100,
    )
    return `${spoken}/A <</O/Layout/BBox [${box.join(' ')}]>>`
  }
}
