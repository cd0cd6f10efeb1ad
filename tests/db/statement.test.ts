import { expect, expectTypeOf, test } from 'vitest'
import type { ReadableLog, WritableLog } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { type Params, prepareAll, prepareOne, prepareRun } from '../../db/statement.ts'
import { granted } from '../../shared-types/result.ts'
import { lead, morning, tempLog, value } from './temp-log.ts'

type Pin = { person: typeof lead; record: string }

const putPin = prepareRun((db, p: Params<Pin>) =>
  db.insertInto('pin').values({ person: p('person'), record: p('record') }),
)
const pinOf = prepareOne((db, p: Params<Pick<Pin, 'person'>>) =>
  db.selectFrom('pin').selectAll().where('person', '=', p('person')),
)
const easyPins = prepareAll((db) =>
  db.selectFrom('pin').select('person').where('record', '=', 'easy').limit(5),
)

test('a query runs with the values it names, and with those written into it', () => {
  const log = tempLog()
  const occasion = { now: morning, by: null }
  const put = (record: string) =>
    value(transact(log, occasion, (tx) => granted(putPin(tx, { person: lead, record }))))
  expect(pinOf(log, { person: lead })).toBeUndefined()
  expect(put('easy')).toBe(1)
  expect(pinOf(log, { person: lead })).toEqual({ person: lead, record: 'easy' })
  expect(easyPins(log)).toEqual([{ person: lead }])
})

test('the types of a row and of the values follow from the tables', () => {
  expectTypeOf(pinOf).returns.toEqualTypeOf<Pin | undefined>()
  expectTypeOf(pinOf).parameters.toEqualTypeOf<[ReadableLog, Readonly<Pick<Pin, 'person'>>]>()
  expectTypeOf(easyPins).parameters.toEqualTypeOf<[ReadableLog]>()
})

test('a reader cannot be handed a write', () => {
  expectTypeOf<WritableLog>().toExtend<ReadableLog>()
  expectTypeOf<ReadableLog>().not.toExtend<WritableLog>()
  expectTypeOf<ReadableLog>().not.toExtend<Parameters<typeof putPin>[0]>()
  expectTypeOf<WritableLog>().not.toExtend<Parameters<typeof putPin>[0]>()
})
