/** How the coverage screen writes its figures. */
import { speciesWords } from '../../shared-types/animal.ts'
import type { CoverageState, FigureName, UnitCoverage } from '../../shared-types/views/coverage.ts'
import type { ShapeKind } from '../parts/shape.tsx'

export const stateShapes: Record<CoverageState, ShapeKind> = {
  detected: 'now',
  short: 'soon',
  'waiting-for-results': 'busy',
  reached: 'fine',
  'nothing-tested': 'idle',
  'no-plan': 'idle',
}

/** One row of the screen, and one herd. */
export function herdKey({ unit, species }: Pick<UnitCoverage, 'unit' | 'species'>): string {
  return `${unit} ${species}`
}

export function herdWords({ unit, name, species }: UnitCoverage): string {
  return `Unit ${unit}${name === '' ? '' : ` ${name}`}, ${speciesWords[species]}`
}

/** "95.3%", and never 100% for less. */
export function chanceText(chance: number): string {
  const text = (chance * 100).toFixed(1)
  return text === '100.0' && chance < 1 ? 'over 99.9%' : `${text}%`
}

/** "1.23%". */
export function shareText(share: number): string {
  return `${(share * 100).toFixed(2)}%`
}

/** How many more; where no number would be enough, that. */
export function moreText(more: number | null): string {
  return more === null ? 'not reachable' : String(more)
}

export interface FigureRow {
  readonly figure: FigureName
  readonly label: string
  readonly value: string
}

/** The figures of a herd in the order in which they follow from one another. */
export function figureRows(herd: UnitCoverage): FigureRow[] {
  const row = (figure: FigureName, label: string, value: string | number) => ({
    figure,
    label,
    value: String(value),
  })
  const { counts, proof, prevalence, atMost, harvested } = herd
  return [
    ...(harvested === null ? [] : [row('harvested', 'Harvested', harvested)]),
    row('checked', 'Checked in', counts.checked),
    row('sampled', 'Sampled', counts.sampled),
    row('usable', 'Usable', counts.usable),
    row('tested', 'Tested', counts.tested),
    row('detected', 'Detected', counts.detected),
    ...(proof === null
      ? []
      : [
          row('detection', 'Chance it would have been found', chanceText(proof.detection)),
          row(
            'detection-in-hand',
            'The same, once all usable are tested',
            chanceText(proof.detectionInHand),
          ),
          row('to-sample', 'Still to sample', moreText(proof.moreToSample)),
          row('needed', 'Still to be tested', proof.needed.map(neededText).join(', ')),
        ]),
    ...(proof?.weighted
      ? [row('points', 'Points, by weights', Number(proof.weighted.points.toFixed(2)))]
      : []),
    ...(atMost === null
      ? []
      : [row('at-most', 'None detected, so at most (95%)', shareText(atMost))]),
    ...(prevalence === null
      ? []
      : [
          row('prevalence', 'Share detected', shareText(prevalence.share)),
          row('exact', '95% interval, exact', intervalText(prevalence.exact)),
          row('wilson', '95% interval, Wilson', intervalText(prevalence.wilson)),
        ]),
  ]
}

function neededText({ confidence, more }: { confidence: number; more: number | null }): string {
  return `${moreText(more)} for ${Number((confidence * 100).toFixed(1))}%`
}

function intervalText({ low, high }: { low: number; high: number }): string {
  return `${shareText(low)} to ${shareText(high)}`
}
