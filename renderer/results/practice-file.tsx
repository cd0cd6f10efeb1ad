import { useState } from 'react'
import { doubtWords } from '../../shared-types/laboratory-result.ts'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { useWho } from '../desk/use-desk.ts'
import { useFetch } from '../desk/use-fetch.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { saveText } from '../parts/pdf.ts'
import { RefusalNote } from '../parts/refusal-note.tsx'

type Made = CallOutput<'results.practiceFile'>

/** In a practice log: a laboratory's file to learn on, and afterwards which of its rows were bad. */
export function PracticeFile() {
  const isPractice = useWho()?.station.practice ?? false
  const { fetch, busy, refusal } = useFetch('results.practiceFile')
  const [made, setMade] = useState<Made>()
  const [isShown, setShown] = useState(false)
  if (!isPractice) return null
  return (
    <>
      <Button
        keyHint="Alt+J"
        isDisabled={busy}
        onPress={() =>
          void fetch({}, (file) => {
            saveText(file.file)
            setMade(file)
          })
        }
      >
        Make a practice file
      </Button>
      {made && (
        <Button keyHint="Alt+Z" onPress={() => setShown(true)}>
          Which rows are bad?
        </Button>
      )}
      <RefusalNote refusal={refusal} />
      {made && isShown && (
        <Dialog title={`${made.planted.length} bad rows`} onClose={() => setShown(false)}>
          <ul>
            {made.planted.map(({ line, doubt }) => (
              <li key={line}>
                Line <span className="numbers">{line}</span>: {doubtWords[doubt]}
              </li>
            ))}
          </ul>
        </Dialog>
      )}
    </>
  )
}
