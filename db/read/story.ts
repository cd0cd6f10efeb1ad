/** The entries behind one animal. */
import type { Entry } from '../../shared-types/entry.ts'
import type { SampleNumber } from '../../shared-types/sample-number.ts'
import { orderStamp } from '../../shared-types/stamp.ts'
import type { ReadableLog } from '../connection.ts'
import { type Params, prepareAll } from '../statement.ts'

const aboutRows = prepareAll((db, p: Params<{ number: SampleNumber }>) =>
  db
    .selectFrom('about')
    .innerJoin('entry', (join) =>
      join
        .onRef('entry.desk', '=', 'about.desk')
        .onRef('entry.seq', '=', 'about.seq')
        .onRef('entry.hash', '=', 'about.hash'),
    )
    .selectAll('entry')
    .where('about.number', '=', p('number')),
)

/** Every entry about any of these animals or bags, oldest first. */
export function entriesAbout(log: ReadableLog, numbers: readonly SampleNumber[]): Entry[] {
  return numbers
    .flatMap((number) => aboutRows(log, { number }))
    .map(({ ms, n, wall, body, ...rest }) => ({
      ...rest,
      at: { ms, n, wall },
      body: JSON.parse(body) as Entry['body'],
    }))
    .toSorted((a, b) => orderStamp(a.at, b.at) || a.seq - b.seq)
}
