import { type PDFContext, PDFHexString, type PDFRef, PDFString } from 'pdf-lib'
import { srgbProfile } from './srgb-profile'

export type DocumentFacts = { title: string; subject: string; author: string; asOf: Date; identity: string }

/** Which standard a file is built after: the dossier's own, or the older one that a free validator knows. */
export type Conformance = 'PDF/A-3u' | 'PDF/A-1b'

/** What the catalog says beyond the pages: metadata, language, what colours mean. Info and metadata say the same, as PDF/A demands. */
export function writeMetadata(
  context: PDFContext,
  catalog: Record<string, PDFRef | PDFRef[] | object>,
  facts: DocumentFacts,
  idHex: string,
  conformance: Conformance,
): void {
  const date = PDFString.fromDate(facts.asOf)
  const text = (value: string): PDFHexString => PDFHexString.fromText(value)
  const metadata = context.register(
    context.stream(Buffer.from(xmpOf(facts, conformance), 'utf8'), { Type: 'Metadata', Subtype: 'XML' }),
  )
  const profile = context.register(context.flateStream(srgbProfile(), { N: 3 }))
  context.trailerInfo.Root = context.register(
    context.obj({
      Type: 'Catalog',
      ...catalog,
      Metadata: metadata,
      OutputIntents: [
        {
          Type: 'OutputIntent',
          S: 'GTS_PDFA1',
          OutputConditionIdentifier: PDFString.of('sRGB IEC61966-2.1'),
          Info: PDFString.of('sRGB IEC61966-2.1'),
          RegistryName: PDFString.of('http://www.color.org'),
          DestOutputProfile: profile,
        },
      ],
      MarkInfo: { Marked: true },
      Lang: PDFString.of('en-GB'),
      ViewerPreferences: { DisplayDocTitle: true },
    }),
  )
  context.trailerInfo.Info = context.register(
    context.obj({
      Title: text(facts.title),
      Subject: text(facts.subject),
      Author: text(facts.author),
      Creator: text('Underwrap'),
      Producer: text('Underwrap'),
      CreationDate: date,
      ModDate: date,
    }),
  )
  context.trailerInfo.ID = context.obj([PDFHexString.of(idHex), PDFHexString.of(idHex)])
}

const NAMESPACES = {
  dc: 'http://purl.org/dc/elements/1.1/',
  xmp: 'http://ns.adobe.com/xap/1.0/',
  pdf: 'http://ns.adobe.com/pdf/1.3/',
  pdfaid: 'http://www.aiim.org/pdfa/ns/id/',
  pdfuaid: 'http://www.aiim.org/pdfua/ns/id/',
  pdfaExtension: 'http://www.aiim.org/pdfa/ns/extension/',
  pdfaSchema: 'http://www.aiim.org/pdfa/ns/schema#',
  pdfaProperty: 'http://www.aiim.org/pdfa/ns/property#',
}

/** PDF/A wants every name that is not its own explained: here the mark of PDF/UA. */
const ACCESSIBILITY_SCHEMA =
  '<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource"><pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>' +
  `<pdfaSchema:namespaceURI>${NAMESPACES.pdfuaid}</pdfaSchema:namespaceURI><pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>` +
  '<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource"><pdfaProperty:name>part</pdfaProperty:name><pdfaProperty:valueType>Integer</pdfaProperty:valueType>' +
  '<pdfaProperty:category>internal</pdfaProperty:category><pdfaProperty:description>Part of ISO 14289 that is followed</pdfaProperty:description></rdf:li></rdf:Seq></pdfaSchema:property>' +
  '</rdf:li></rdf:Bag></pdfaExtension:schemas>'

function xmpOf({ title, subject, author, asOf }: DocumentFacts, conformance: Conformance): string {
  const escaped = (value: string): string => value.replace(/[<&>]/g, (mark) => `&#${mark.charCodeAt(0)};`)
  const alternative = (value: string): string =>
    `<rdf:Alt><rdf:li xml:lang="x-default">${escaped(value)}</rdf:li></rdf:Alt>`
  const iso = `${asOf.toISOString().slice(0, 19)}+00:00`
  const [part, level] = conformance === 'PDF/A-3u' ? ['3', 'U'] : ['1', 'B']
  const names = Object.entries(NAMESPACES).map(([name, uri]) => `xmlns:${name}="${uri}"`)
  return [
    '<?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/">',
    '<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">',
    `<rdf:Description rdf:about="" ${names.join(' ')}>`,
    '<dc:format>application/pdf</dc:format><dc:language><rdf:Bag><rdf:li>en-GB</rdf:li></rdf:Bag></dc:language>',
    `<dc:title>${alternative(title)}</dc:title><dc:description>${alternative(subject)}</dc:description>`,
    `<dc:creator><rdf:Seq><rdf:li>${escaped(author)}</rdf:li></rdf:Seq></dc:creator>`,
    `<xmp:CreateDate>${iso}</xmp:CreateDate><xmp:ModifyDate>${iso}</xmp:ModifyDate><xmp:MetadataDate>${iso}</xmp:MetadataDate>`,
    '<xmp:CreatorTool>Underwrap</xmp:CreatorTool><pdf:Producer>Underwrap</pdf:Producer>',
    `<pdfaid:part>${part}</pdfaid:part><pdfaid:conformance>${level}</pdfaid:conformance>`,
    conformance === 'PDF/A-3u' ? `<pdfuaid:part>1</pdfuaid:part>${ACCESSIBILITY_SCHEMA}` : '',
    '</rdf:Description></rdf:RDF></x:xmpmeta><?xpacket end="w"?>',
  ].join('\n')
}
