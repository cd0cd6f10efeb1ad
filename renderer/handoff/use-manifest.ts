/** The documents of a signed handoff: the manifest to print, and the same for machines. */
import { useCallback } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { HandoffNumber } from '../../shared-types/sample-number.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { openPdf, saveText } from '../parts/pdf.ts'
import { sayRefused } from '../scanner/strip.ts'

export interface ManifestFiles {
  readonly openManifest: () => Promise<void>
  readonly saveJson: () => Promise<void>
  readonly saveCsv: () => Promise<void>
}

export function useManifest(handoff: HandoffNumber): ManifestFiles {
  const connection = useConnection()
  const fetched = useCallback(
    async (use: (files: CallOutput<'manifest'>) => void) => {
      const files = await callDesk(connection, 'manifest', { handoff })
      if (files.ok) use(files.value)
      else sayRefused(files.refusal)
    },
    [connection, handoff],
  )
  return {
    openManifest: () => fetched(({ pdf }) => openPdf(pdf)),
    saveJson: () => fetched(({ json }) => saveText(json)),
    saveCsv: () => fetched(({ csv }) => saveText(csv)),
  }
}
