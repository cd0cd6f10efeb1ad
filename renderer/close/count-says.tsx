import type { CloseItem } from '../../shared-types/views/close.ts'
import { useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { isOff, isUnexplained } from './next-step.ts'
import { Tries } from './tries.tsx'
import { VarianceText } from './variance-text.tsx'

/** What a count says beside the log, and the way to explain it where it differs. */
export function CountSays(props: { item: CloseItem; mayAsk: boolean; onExplain: () => void }) {
  const { item, mayAsk, onExplain } = props
  const mayExplain = useMay('variance.explain')
  const differs = isOff(item)
  const deed = isUnexplained(item) ? 'Explain' : 'Explain again'
  return (
    <div className="close-says">
      <div>
        <VarianceText item={item} />
        <Tries tries={item.tries} />
      </div>
      {differs && mayAsk && (
        <Button
          onPress={onExplain}
          isDisabled={!mayExplain}
          why="only the lead explains"
          label={`${deed}: ${item.words}`}
        >
          {deed}
        </Button>
      )}
    </div>
  )
}
