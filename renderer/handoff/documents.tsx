import type { HandoffView } from '../../shared-types/views/handoff.ts'
import { Button } from '../parts/button.tsx'
import { useManifest } from './use-manifest.ts'

/** The documents of a signed handoff. Keys only where one handoff alone is shown. */
export function Documents(props: { handoff: HandoffView; withKeys?: boolean }) {
  const { handoff, withKeys = false } = props
  const { openManifest, saveJson, saveCsv } = useManifest(handoff.handoff)
  return (
    <div className="row">
      <Button
        kind={withKeys ? 'main' : 'quiet'}
        keyHint={withKeys ? 'Alt+P' : undefined}
        autoFocus={withKeys}
        label={`Manifest (PDF) of ${handoff.handoff}`}
        onPress={() => void openManifest()}
      >
        Manifest (PDF)
      </Button>
      <Button
        keyHint={withKeys ? 'Alt+J' : undefined}
        label={`JSON of ${handoff.handoff}`}
        onPress={() => void saveJson()}
      >
        JSON
      </Button>
      <Button
        keyHint={withKeys ? 'Alt+C' : undefined}
        label={`CSV of ${handoff.handoff}`}
        onPress={() => void saveCsv()}
      >
        CSV
      </Button>
    </div>
  )
}
