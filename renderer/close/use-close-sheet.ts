import { useCallback } from 'react'
import type { CallInput } from '../../shared-types/desk-api.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { openPdf } from '../parts/pdf.ts'
import { sayRefused } from '../scanner/strip.ts'

/** Opens a sheet as a PDF: that of a desk's day, or of a station's. */
function useSheet<N extends 'closeSheet' | 'stationCloseSheet'>(name: N) {
  const connection = useConnection()
  return useCallback(
    async (input: CallInput<N>) => {
      const sheet = await callDesk(connection, name, input)
      if (sheet.ok) openPdf(sheet.value)
      else sayRefused(sheet.refusal)
    },
    [connection, name],
  )
}

export const useCloseSheet = () => useSheet('closeSheet')
export const useStationCloseSheet = () => useSheet('stationCloseSheet')
