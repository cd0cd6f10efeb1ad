import { expect, test } from 'vitest'
import { connectInMemory } from '../../db/connection.ts'
import { applyRowWrites, patch, put, remove } from '../../db/fold/row-write.ts'
import { makeReadTables } from '../../db/migrations/migrate.ts'
import { animalNumber, kitNumber } from '../../shared-types/sample-number.ts'
import { desk } from './temp-log.ts'

const kit = kitNumber(desk, 1)
const other = kitNumber(desk, 2)
const animal = animalNumber(desk, 1)
const reserved = put('kit', { kit, animal, state: 'reserved', numbered_ms: 5 })

function kitsAfter(...writes: Parameters<typeof applyRowWrites>[1]) {
  const database = connectInMemory()
  makeReadTables(database)
  applyRowWrites(database, writes)
  return database.prepare('SELECT kit, animal, state FROM kit ORDER BY kit').all()
}

test('put makes a row, and a second put takes the place of the whole row', () => {
  expect(kitsAfter(reserved)).toEqual([{ kit, animal, state: 'reserved' }])
  const again = put('kit', { kit, state: 'spoiled', numbered_ms: 6 })
  expect(kitsAfter(reserved, again)).toEqual([{ kit, animal: null, state: 'spoiled' }])
})

test('patch changes the columns it names in the row of its key, and no other', () => {
  const second = put('kit', { kit: other, animal, state: 'reserved', numbered_ms: 5 })
  expect(kitsAfter(reserved, second, patch('kit', { kit }, { state: 'opened' }))).toEqual([
    { kit, animal, state: 'opened' },
    { kit: other, animal, state: 'reserved' },
  ])
})

test('patch of a row that is not there changes nothing: a fact may come before its cause', () => {
  expect(kitsAfter(patch('kit', { kit }, { state: 'opened' }))).toEqual([])
})

test('patch leaves a column alone whose value is not given', () => {
  const change = patch('kit', { kit }, { state: 'opened', animal: undefined })
  expect(kitsAfter(reserved, change)).toEqual([{ kit, animal, state: 'opened' }])
})

test('remove takes out the rows of its key', () => {
  expect(kitsAfter(reserved, remove('kit', { kit }))).toEqual([])
})

test('a key with a hole is a bug, not a write on rows nobody meant', () => {
  expect(() => kitsAfter(reserved, remove('kit', {}))).toThrow(TypeError)
  expect(() => kitsAfter(reserved, remove('kit', { kit: undefined as never }))).toThrow(TypeError)
})
