import { streamName } from '@/lib/domain/facts/fact'
import type { LabelMeaning } from '@/lib/domain/labels/read-label'

/** What a label gives to a form: values by field, what was filled in words, what it lacks, and what to look at. */
export type Filling = { values: Record<string, string>; words: string[]; missing: string[]; remark: string | null }

const present = (values: Record<string, string | undefined>): Record<string, string> =>
  Object.fromEntries(Object.entries(values).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])))

/** A batch's receipt from its label: number, article, dates. A plain text counts as the batch number; the person sees it stand there. */
export function batchFilling(meaning: LabelMeaning): Filling {
  switch (meaning.kind) {
    case 'own':
      return {
        values: {},
        words: [],
        missing: [],
        remark: `This label was printed here for ${meaning.stream.replace(':', ' ')}: it is received already, if it is a batch.`,
      }
    case 'article':
      return {
        values: { gtin: meaning.gtin },
        words: [`article ${meaning.gtin}`],
        missing: ['the batch number', 'the use-by day'],
        remark: null,
      }
    case 'text':
      return {
        values: { number: meaning.text },
        words: [`batch ${meaning.text}`],
        missing: ['the use-by day'],
        remark: 'This is no GS1 label: its text was taken as the batch number. Compare it with the package.',
      }
    case 'gs1': {
      const { elements, expiry, production } = meaning
      const netKg = netKgOf(elements)
      return {
        values: present({
          number: elements['10'],
          gtin: elements['01'],
          expiresOn: expiry?.date,
          madeOn: production?.date,
          expiryAsLabelled: elements['17'] === undefined ? undefined : `17 = ${elements['17']}`,
        }),
        words: [
          elements['10'] === undefined ? null : `batch ${elements['10']}`,
          elements['01'] === undefined ? null : `article ${elements['01']}`,
          expiry === null ? null : `use by ${expiry.date}`,
          production === null ? null : `made ${production.date}`,
          expiry === null || expiry.isDayGiven ? null : `the label states the month only: it counts to its last day`,
          netKg === null ? null : `net ${netKg} kg a package`,
        ].filter((one) => one !== null),
        missing: [elements['10'] ? null : 'the batch number', expiry ? null : 'the use-by day'].filter(
          (one) => one !== null,
        ),
        remark: null,
      }
    }
  }
}

/** An instrument from its label: asset and serial number, or its own number from a plain text. */
export function instrumentFilling(meaning: LabelMeaning): Filling {
  switch (meaning.kind) {
    case 'own':
      return {
        values: { number: streamName(meaning.stream) },
        words: [`number ${streamName(meaning.stream)}`],
        missing: [],
        remark: null,
      }
    case 'article':
      return {
        values: {},
        words: [],
        missing: [],
        remark: `The label states an article number only, ${meaning.gtin}: it names the kind, not this one instrument.`,
      }
    case 'text':
      return { values: { number: meaning.text }, words: [`number ${meaning.text}`], missing: [], remark: null }
    case 'gs1': {
      const [asset, serial] = [meaning.elements['8004'], meaning.elements['21']]
      return {
        values: present({ asset, serial }),
        words: [
          asset === undefined ? null : `asset number ${asset}`,
          serial === undefined ? null : `serial ${serial}`,
        ].filter((one) => one !== null),
        missing: [],
        remark: asset || serial ? null : 'The label states neither an asset (8004) nor a serial number (21).',
      }
    }
  }
}

const WEIGHTS = ['3100', '3101', '3102', '3103', '3104', '3105'] as const

/** Net weight in kg as (310n) states it, with n decimals; null when it does not. */
function netKgOf(elements: (LabelMeaning & { kind: 'gs1' })['elements']): string | null {
  for (const [decimals, ai] of WEIGHTS.entries()) {
    const digits = elements[ai]
    if (digits === undefined) continue
    const whole = digits.slice(0, 6 - decimals).replace(/^0+(?=\d)/, '')
    return decimals === 0 ? whole : `${whole}.${digits.slice(6 - decimals)}`
  }
  return null
}
