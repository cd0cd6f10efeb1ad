import type { TextFile } from '../../shared-types/views/common.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { saveText } from '../parts/pdf.ts'
import { sayDone } from '../scanner/strip.ts'

function save(file: TextFile) {
  saveText(file)
  sayDone(`${file.name} is saved.`)
}

/** The whole table as CSV; the desk writes it, so that no cell is taken for a formula. */
export function SaveTable() {
  const { data } = useAsk('coverage.csv', nothing)
  return (
    <Button
      keyHint="Alt+S"
      isDisabled={data === undefined}
      why="the table is not ready yet"
      onPress={() => data && save(data)}
    >
      Save as CSV
    </Button>
  )
}
