import { nothing } from '../desk/use-desk.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { Button } from '../parts/button.tsx'
import { saveText } from '../parts/pdf.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** The whole table as CSV; the desk writes it, so that no cell is taken for a formula. */
export function SaveTable() {
  const connection = useConnection()
  async function save() {
    const file = await callDesk(connection, 'coverage.csv', nothing)
    if (!file.ok) return sayRefused(file.refusal)
    saveText(file.value)
    sayDone(`${file.value.name} is saved.`)
  }
  return (
    <Button keyHint="Alt+S" onPress={() => void save()}>
      Save as CSV
    </Button>
  )
}
