/** `npm run bench`: figures as ratios against a baseline run beside them; never asserted as wall time. */
import { closeFigures } from './close.bench.ts'
import { coverageFigures } from './coverage.bench.ts'
import { deskFigures } from './desk.bench.ts'
import { labelFigures } from './labels.bench.ts'
import { lineFigures } from './line.bench.ts'
import { manifestFigures } from './manifest.bench.ts'
import type { Figure } from './measure.ts'
import { mergeFigures } from './merge.bench.ts'
import { resultFigures } from './results.bench.ts'
import { safekeepingFigures } from './safekeeping.bench.ts'
import { screenFigures } from './screens.bench.ts'

function printFigure({ what, figure, target, met }: Figure): void {
  const verdict = met === null ? '' : met ? '  met' : '  NOT MET'
  console.log(`${what}\n    ${figure}   [${target}]${verdict}`)
}

for (const figures of [
  deskFigures,
  lineFigures,
  closeFigures,
  manifestFigures,
  labelFigures,
  coverageFigures,
  safekeepingFigures,
  mergeFigures,
  resultFigures,
  screenFigures,
])
  for (const figure of await figures()) printFigure(figure)
