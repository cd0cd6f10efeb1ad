/** Which fold belongs to which kind of entry; a kind without one does not compile. */
import { animalFolds } from './animals.ts'
import { closeFolds } from './close.ts'
import { discrepancyFolds } from './discrepancies.ts'
import { coolerFolds } from './coolers.ts'
import { coverageFolds } from './coverage.ts'
import type { Folds } from './fold.ts'
import { handoffFolds } from './handoff.ts'
import { keptSafeFolds } from './kept-safe.ts'
import { kitFolds } from './kits.ts'
import { labelFolds } from './labels.ts'
import { lineFolds } from './line.ts'
import { peopleFolds } from './people.ts'
import { slipFolds } from './slips.ts'
import { resultFolds } from './results.ts'
import { stationFolds } from './station.ts'
import { tissueFolds } from './tissue.ts'

export const folds: Folds = {
  ...stationFolds,
  ...keptSafeFolds,
  ...peopleFolds,
  ...animalFolds,
  ...lineFolds,
  ...tissueFolds,
  ...kitFolds,
  ...labelFolds,
  ...coolerFolds,
  ...closeFolds,
  ...handoffFolds,
  ...discrepancyFolds,
  ...resultFolds,
  ...coverageFolds,
  ...slipFolds,
}
