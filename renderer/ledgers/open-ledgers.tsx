import { useState } from 'react'
import type { LedgerName } from '../../shared-types/views/ledger.ts'
import { Button } from '../parts/button.tsx'
import { LedgerDialog } from './ledger-dialog.tsx'

/** The way to the ledgers, with the one opened first that belongs to the screen. */
export function OpenLedgers({ first }: { first: LedgerName }) {
  const [isOpen, setOpen] = useState(false)
  return (
    <>
      <Button keyHint="Alt+G" onPress={() => setOpen(true)}>
        Ledgers
      </Button>
      {isOpen && <LedgerDialog first={first} onClose={() => setOpen(false)} />}
    </>
  )
}
