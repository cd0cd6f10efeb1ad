import type { FigureName, UnitCoverage } from '../../shared-types/views/coverage.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Dialog } from '../parts/dialog.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { herdWords } from './words.ts'

/** A figure with its formula, the numbers put in, where the formula is from, and what it does not say. */
export function FigureDialog(props: {
  herd: UnitCoverage
  figure: FigureName
  onClose: () => void
}) {
  const { herd, figure, onClose } = props
  const { unit, species } = herd
  const { data, refusal } = useAsk('coverage.figure', { unit, species, figure })
  return (
    <Dialog title={data?.title ?? herdWords(herd)} onClose={onClose}>
      <RefusalNote refusal={refusal} />
      {data && (
        <div className="stack">
          <p>
            {herdWords(herd)}: <b className="numbers coverage-value">{data.value}</b>
          </p>
          <section aria-label="Formula">
            <h3>Formula</h3>
            <p className="coverage-formula">{data.formula}</p>
          </section>
          {data.put.length > 0 && (
            <section aria-label="Numbers put in">
              <h3>Numbers put in</h3>
              <dl className="coverage-put">
                {data.put.map(({ sign, is, from }) => (
                  <div key={sign}>
                    <dt>{sign}</dt>
                    <dd>
                      <b className="numbers">{is}</b> <span>{from}</span>
                    </dd>
                  </div>
                ))}
              </dl>
            </section>
          )}
          <section aria-label="Source">
            <h3>Source</h3>
            <p>{data.source}</p>
          </section>
          <section aria-label="What it does not say">
            <h3>What it does not say</h3>
            <p>{data.caution}</p>
          </section>
        </div>
      )}
    </Dialog>
  )
}
