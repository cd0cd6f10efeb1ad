import type { CloseItem } from '../../shared-types/views/close.ts'
import { useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { isUnexplained } from './next-step.ts'
import { VarianceText } from './variance-text.tsx'

/** What a count says beside the log, and the way to explain it where it differs. */
export function CountSays(props: { item: CloseItem; mayAsk: boolean; onExplain: () => void }) {
  const { item, mayAsk, onExplain } = props
  const mayExplain = useMay('variance.explain')
  const differs = item.variance !== null && item.variance !== 0
  const deed = isUnexplained(item) ? 'Explain' : 'Explain again'
  return (
    <div className="close-says">
      <VarianceText item={item} />
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
