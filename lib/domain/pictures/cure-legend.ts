import { showDecimal } from '../decimal'
import type { CurePlot } from './cure-plot'
import type { PictureFormat } from './picture'
import type { LegendEntry } from './plot-legend'

/** What a cure plot's axes are. */
export function cureCaption(plot: CurePlot, format: PictureFormat): string {
  const words = format === 'wide' ? 'temperature as logged; time across, ' : 'time across, '
  return `${words}${plot.offset === 'Z' ? 'UTC' : `UTC${plot.offset}`}`
}

/** The lines of a cure plot by name: the coldest probe first, with its lowest temperature; the ambient; the rule; the breaks. */
export function cureLegend(plot: CurePlot): LegendEntry[] {
  const { rule } = plot
  return [
    ...[...plot.probes]
      .sort((a, b) => Number(b.isColdest) - Number(a.isColdest))
      .map(
        (one): LegendEntry => ({
          style: one.isColdest ? 'series-coldest' : 'series',
          text: `${one.clock} o’clock${one.isColdest ? ', coldest' : ''}: lowest ${one.lowest?.shown ?? 'not logged'}`,
        }),
      ),
    ...(plot.ambient.length > 0 ? [{ style: 'series-ambient', text: 'ambient' } as const] : []),
    ...(rule?.kind === 'cure-hold'
      ? [
          {
            style: 'limit-line',
            text: `${showDecimal(rule.atLeastTemp)} °C, to be held ${showDecimal(rule.hours)} h unbroken`,
          } as const,
        ]
      : []),
    ...(rule?.kind === 'cure-equivalent' && plot.probes.some((one) => one.isColdest && one.curve)
      ? [{ style: 'series-second', text: 'equivalent cure at the coldest probe, right axis; complete at 1' } as const]
      : []),
    ...(plot.breaks.length > 0
      ? [
          {
            style: 'break-area',
            sign: 'area',
            text: [...new Set(plot.breaks.map((one) => one.why))].join('; '),
          } as const,
        ]
      : []),
  ]
}
