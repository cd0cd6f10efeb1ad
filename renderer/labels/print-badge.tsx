import { useState } from 'react'
import type { PersonView } from '../../shared-types/views/people.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { ReprintDialog } from '../kits/reprint-dialog.tsx'
import { Button } from '../parts/button.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { takeLabels } from './hand-over.ts'
import { useLabelStock } from './use-printing.ts'

/** Prints a person's badge, which they scan to sign in; once they have one, another is a reprint. */
export function PrintBadge({ person }: { readonly person: PersonView | undefined }) {
  const may = useMay('labels.printBadge')
  const stock = useLabelStock('badges')
  const [isAgain, setAgain] = useState(false)
  const { tell, busy } = useTell('labels.printBadge')

  async function print() {
    if (!person) return
    const answer = await tell({ person: person.person, stock })
    if (answer.ok) return sayDone(`Badge of ${person.name}. ${takeLabels(answer.value)}`)
    if (answer.refusal.code === 'first-copy-still-good') return setAgain(true)
    sayRefused(answer.refusal)
  }
  return (
    <>
      <Button
        keyHint="g"
        onPress={() => void print()}
        isDisabled={!may || busy || person === undefined}
        why={may ? undefined : 'the crew prints labels'}
      >
        Badge
      </Button>
      {isAgain && person && (
        <ReprintDialog number={person.person} onClose={() => setAgain(false)} />
      )}
    </>
  )
}
