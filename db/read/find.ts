/** Animals found while a number, tag or hunter is typed, by the beginning of any of them. */
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'

/** As many as are shown. */
const most = 20

function beginning(column: 'animal' | 'tag' | 'hunter') {
  return prepareAll((db, p: Params<{ from: string; to: string }>) =>
    db
      .selectFrom('animal')
      .select(['animal', 'tag', 'hunter', 'species', 'state', 'desk'])
      .where(column, '>=', p('from') as never)
      .where(column, '<', p('to') as never)
      .orderBy(column)
      .limit(most),
  )
}

const byNumber = beginning('animal')
const byTag = beginning('tag')
const byHunter = beginning('hunter')

/** Up to twenty animals, those whose tag begins so first, then by number and hunter. */
export function animalsBeginning(log: ReadableLog, text: string) {
  const range = { from: text, to: `${text}\uffff` }
  const found = [byTag, byNumber, byHunter].flatMap((rows) => rows(log, range))
  return [...new Map(found.map((row) => [row.animal, row])).values()].slice(0, most)
}
