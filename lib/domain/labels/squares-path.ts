/** The dark squares of a code as one SVG path, a unit each. @param quiet units of margin on the left and above */
export function squaresPath(
  { width, height }: { width: number; height: number },
  isDark: (x: number, y: number) => boolean,
  quiet = 0,
): string {
  let path = ''
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) if (isDark(x, y)) path += `M${x + quiet} ${y + quiet}h1v1h-1z`
  return path
}
