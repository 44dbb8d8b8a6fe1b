/** Measures of the drawing sheet in points, y downwards from the top of an A4 page. */
export const SHEET = {
  widthPt: 595.28,
  heightPt: 841.89,
  /** Outer frame. */
  frame: { left: 28.5, top: 28.5, right: 566.78, bottom: 813.39 },
  titleBlockHeightPt: 44,
  /** Where blocks are placed. */
  body: { left: 45, top: 46, right: 550.28, bottom: 757 },
} as const

export const BODY_WIDTH_PT = SHEET.body.right - SHEET.body.left
