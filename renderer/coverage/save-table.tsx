import type { CallInput } from '../../shared-types/desk-api.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { Button } from '../parts/button.tsx'
import { saveText } from '../parts/pdf.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** A table as CSV; the desk writes it when it is asked for, so that no cell is taken for a formula. */
export function SaveTable(props: {
  by: CallInput<'coverage.csv'>['by']
  keyHint: string
  words: string
}) {
  const { by, keyHint, words } = props
  const connection = useConnection()
  async function save() {
    const file = await callDesk(connection, 'coverage.csv', { by })
    if (!file.ok) return sayRefused(file.refusal)
    saveText(file.value)
    sayDone(`${file.value.name} is saved.`)
  }
  return (
    <Button keyHint={keyHint} onPress={() => void save()}>
      {words}
    </Button>
  )
}
