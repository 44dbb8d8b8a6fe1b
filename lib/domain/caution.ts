/** The standing caution: on every screen that steers work and in every dossier. */
export const STANDING_CAUTION =
  'This record system does not authorise work. Follow the site permit, local regulations and codes, the material safety data sheets and the approved procedure. Where they differ from this screen, they govern.'
