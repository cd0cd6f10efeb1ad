/** What is wrong with a row in doubt, in one sentence, and what a person does about it in another. */
import type { DoubtfulRow, RowDoubt } from '../../../shared-types/laboratory-result.ts'
import { grouped } from '../../../shared-types/sample-number.ts'

type Row = Pick<DoubtfulRow, 'doubt' | 'number' | 'said' | 'date' | 'bag'>

const ask = 'Ask the laboratory'

const nexts: Record<RowDoubt, string> = {
  'number-not-read': `${ask} what the row is. If it is a total, a control or a title, leave it out.`,
  'check-character-wrong': `Compare with the list of the handoff or ${ask.toLowerCase()}, and type the right number.`,
  'number-damaged': `${ask} for the file with this column as text, or type the number as it stands on the bag.`,
  'not-a-bag':
    'Results belong to a bag: type the number of the left, right or obex bag that was tested.',
  'wrong-season':
    'It belongs to the log of another season: read it in there, and leave it out here.',
  'not-found': 'Merge the log of its station first; if it stays unknown, ask the laboratory.',
  'never-sent':
    'Find out how it came to the laboratory; take the result if the bag is the one it says.',
  twice: 'Leave this one out: the first row of the bag was taken.',
  contradictory: `${ask} which of the rows holds; take that one and leave the others out.`,
  changed: 'Take it if the laboratory corrected or confirmed its result. Both stay on record.',
  unsuitable: 'Take it, so that the hunter can be told that this tissue gave no result.',
  'wrong-tissue': `${ask} what tissue it saw. A "not detected" of such tissue proves nothing.`,
  'word-not-known': 'Say what the word means for this row, or leave it out.',
  'date-not-read': `${ask} for the day of the test and type it.`,
  'date-impossible': `${ask} for the day of the test and type it.`,
  'row-torn': `${ask} for the file as a workbook, or put the row right: an unquoted comma moved its cells.`,
}

export function doubtSentence(row: Row): { say: string; next: string } {
  return { say: say(row), next: nexts[row.doubt] }
}

function say({ doubt, number, said, date, bag }: Row): string {
  const named = bag === null ? `“${number}”` : grouped(bag)
  switch (doubt) {
    case 'number-not-read':
      return number === '' ? 'The row has no number.' : `“${number}” is not one of our numbers.`
    case 'check-character-wrong':
      return `The last character of “${number}” does not fit the others, so one of them is wrong.`
    case 'number-damaged':
      return bag === null
        ? `A spreadsheet turned the number into “${number}”; what it was cannot be told.`
        : `A spreadsheet dropped noughts from “${number}”; it may have been ${grouped(bag)}.`
    case 'not-a-bag':
      return `“${number}” is the number of something else than a bag.`
    case 'wrong-season':
      return `${named} is of season 20${number.trim().slice(0, 2)}, which is not in this log.`
    case 'not-found':
      return `This log has no bag ${named}.`
    case 'never-sent':
      return `By this log bag ${named} was never given to a courier.`
    case 'twice':
      return `Bag ${named} comes twice and both rows say “${said}”.`
    case 'contradictory':
      return `Rows of bag ${named} contradict each other; this one says “${said}”.`
    case 'changed':
      return `Bag ${named} is “${said}” here, and something else on record.`
    case 'unsuitable':
      return `The laboratory could not test the tissue of bag ${named}.`
    case 'wrong-tissue':
      return `The sampler noted that bag ${named} holds no lymph node, yet it is “${said}”.`
    case 'word-not-known':
      return said === ''
        ? `Bag ${named} has no result in its row.`
        : `“${said}” was given no meaning.`
    case 'date-not-read':
      return `“${date}” of bag ${named} is not a day.`
    case 'date-impossible':
      return `Bag ${named} cannot have been tested on ${date}: that is before it was sealed, or to come.`
    case 'row-torn':
      return 'The row has more cells than the table has headings, so its cells may have moved.'
  }
}
