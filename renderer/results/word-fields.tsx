import { ResultWord, resultWords, type WordMeans } from '../../shared-types/laboratory-result.ts'
import type { ResultLookView } from '../../shared-types/views/results.ts'
import { Pick } from '../parts/pick.tsx'
import { type ReadingDraft, wordKey } from './reading-draft.ts'

type Meaning = WordMeans | 'unsaid'

const meanings: readonly { value: Meaning; label: string }[] = [
  ...ResultWord.options.map((value) => ({ value, label: resultWords[value] })),
  { value: 'skip', label: 'no result: pass over' },
  { value: 'unsaid', label: 'not known: list these rows' },
]

/** What each of the laboratory's own words means. What is left unsaid is listed row by row. */
export function WordFields(props: {
  look: ResultLookView
  draft: ReadingDraft
  say: (more: Partial<ReadingDraft>) => void
}) {
  const { look, draft, say } = props
  function mean(said: string, meaning: Meaning) {
    const { [wordKey(said)]: _before, ...others } = draft.words
    say({ words: meaning === 'unsaid' ? others : { ...others, [wordKey(said)]: meaning } })
  }
  if (look.said.length === 0) return null
  return (
    <fieldset className="choice">
      <legend>What its words mean</legend>
      <div className="results-fields">
        {look.said.map(({ said, rows }) => (
          <Pick<Meaning>
            key={said}
            label={`“${said || '(empty)'}” (${rows} ${rows === 1 ? 'row' : 'rows'})`}
            options={meanings}
            value={draft.words[wordKey(said)] ?? 'unsaid'}
            onChange={(meaning) => mean(said, meaning)}
          />
        ))}
      </div>
    </fieldset>
  )
}
