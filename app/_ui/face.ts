import localFont from 'next/font/local'

/** The letters of every screen, asked for with the page itself: no screen is laid out in another face first. */
const latin = localFont({
  src: '../../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2',
  variable: '--face-latin',
  weight: '200 800',
  display: 'swap',
  preload: true,
  adjustFontFallback: false,
  declarations: [
    {
      prop: 'unicode-range',
      value:
        'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD',
    },
  ],
})

/** Letters of further Latin alphabets, fetched where a name has one. */
const latinExt = localFont({
  src: '../../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-wght-normal.woff2',
  variable: '--face-latin-ext',
  weight: '200 800',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
  declarations: [
    {
      prop: 'unicode-range',
      value:
        'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+0304,U+0308,U+0329,U+1D00-1DBF,U+1E00-1E9F,U+1EF2-1EFF,U+2020,U+20A0-20AB,U+20AD-20C0,U+2113,U+2C60-2C7F,U+A720-A7FF',
    },
  ],
})

/** Limits, arrows and the letters of formulas, which those faces have not: looking for them in a device's own faces takes longer than all the rest of a first layout. Drawn by `npm run build:signs`. */
const signs = localFont({
  src: './signs.woff2',
  variable: '--face-signs',
  weight: '200 800',
  display: 'swap',
  preload: true,
  adjustFontFallback: false,
  declarations: [
    {
      prop: 'unicode-range',
      value:
        'U+0394,U+03A3,U+03A6,U+03B1-03B3,U+03B5,U+03BD,U+03C0-03C1,U+03C4,U+2074,U+2076,U+207B,U+2080-2082,U+2099,U+2192,U+221A,U+222B,U+2248,U+2264-2265,U+2308-230B,U+25C6,U+2713',
    },
  ],
})

/** Classes of the root element that make the faces known to the styles. */
export const FACES = `${latin.variable} ${signs.variable} ${latinExt.variable}`
