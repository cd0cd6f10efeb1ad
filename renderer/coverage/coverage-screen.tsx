import { useState } from 'react'
import type { CoverageView } from '../../shared-types/views/coverage.ts'
import { nothing, useAsk, useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Empty } from '../parts/empty.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useFirstFocus, useRoving } from '../parts/use-roving.ts'
import './coverage.css'
import { PicturesView } from './pictures-view.tsx'
import { PlanView } from './plan-view.tsx'
import { SaveTable } from './save-table.tsx'
import { UnitDetail } from './unit-detail.tsx'
import { UnitTable } from './unit-table.tsx'
import { herdKey } from './words.ts'

type Inside = 'pictures' | 'plan'

/** What the samples of each unit prove so far, in a table, in pictures, and by which design. */
export function CoverageScreen() {
  const { data, refusal } = useAsk('coverage', nothing)
  const [inside, setInside] = useState<Inside>()
  const leave = () => setInside(undefined)
  if (data === undefined) return <RefusalNote refusal={refusal} />
  if (inside === 'pictures') return <PicturesView coverage={data} onClose={leave} />
  if (inside === 'plan') return <PlanView coverage={data} onClose={leave} />
  return <Units coverage={data} onInside={setInside} />
}

function Units(props: { coverage: CoverageView; onInside: (inside: Inside) => void }) {
  const { coverage, onInside } = props
  const { units, plan } = coverage
  const mayPlan = useMay('coverage.plan')
  const roving = useRoving(units.map(herdKey))
  useFirstFocus(roving)
  const shown = units.find((herd) => herdKey(herd) === roving.chosen)
  const short = units.filter(({ state }) => state === 'short').length
  return (
    <div className="coverage">
      <div className="coverage-main">
        <h1 className="unseen">Coverage</h1>
        <Panel
          title="What the samples prove"
          note={plan === null ? '' : `${short} of ${units.length} short of samples`}
          actions={
            <>
              <Button keyHint="Alt+P" onPress={() => onInside('pictures')}>
                Pictures
              </Button>
              <Button keyHint="Alt+D" onPress={() => onInside('plan')}>
                {mayPlan ? 'Design and numbers' : 'Design'}
              </Button>
              <SaveTable by="herd" keyHint="Alt+S" words="Save as CSV" />
            </>
          }
        >
          <Reading coverage={coverage} />
          {units.length === 0 ? (
            <Empty say="No animal of a known unit is checked in." next="Check animals in first." />
          ) : (
            <UnitTable units={units} roving={roving} />
          )}
        </Panel>
      </div>
      {shown && (
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- scrolls without holding anything to press
        <div className="coverage-side" role="group" aria-label="The unit chosen" tabIndex={0}>
          <UnitDetail key={herdKey(shown)} herd={shown} limits={coverage.limits} />
        </div>
      )}
    </div>
  )
}

/** What must be known before the table is read. */
function Reading({ coverage: { plan, withoutUnit } }: { coverage: CoverageView }) {
  return (
    <>
      {plan === null && (
        <Notice kind="warn">
          No design is set, so nothing is proved yet. Set what the sampling is meant to find under
          Design and numbers.
        </Notice>
      )}
      {plan !== null && (
        <p>
          Chance that at least one animal tested would show the disease, if it were in{' '}
          <b>{Number((plan.design.prevalence * 100).toFixed(3))}%</b> of the herd. Hunters’ animals
          are no random sample: the true chance is likely lower.
        </p>
      )}
      {withoutUnit > 0 && (
        <Notice kind="warn">
          {withoutUnit} {withoutUnit === 1 ? 'animal has' : 'animals have'} no known unit and count
          nowhere.
        </Notice>
      )}
    </>
  )
}
