import { useCallback } from 'react'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { openPdf } from '../parts/pdf.ts'
import { sayRefused } from '../scanner/strip.ts'

/** Opens the close sheet of a day as a PDF. */
export function useCloseSheet(): (date: LocalDate) => Promise<void> {
  const connection = useConnection()
  return useCallback(
    async (date) => {
      const sheet = await callDesk(connection, 'closeSheet', { date })
      if (sheet.ok) openPdf(sheet.value)
      else sayRefused(sheet.refusal)
    },
    [connection],
  )
}
