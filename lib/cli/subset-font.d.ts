declare module 'subset-font' {
  /** Cut a face down to the signs of a text. */
  export default function subsetFont(
    font: Buffer,
    text: string,
    options: { targetFormat: 'woff2'; noLayoutClosure: boolean; noHinting: boolean },
  ): Promise<Buffer>
}
