import { expect, test } from 'vitest'
import {
  commandOf,
  errorsOf,
  newDraft,
  steps,
  suggestedCode,
} from '../../../renderer/shelf/set-up-draft.ts'
import { deskApi } from '../../../shared-types/desk-api.ts'
import { StationCode } from '../../../shared-types/sample-number.ts'

const filled = {
  ...newDraft('2026-11-14', 'America/Denver'),
  name: 'Kestrel Valley',
  code: 'KET',
  kits: '100',
  blankLabels: '1000',
  coolers: '3',
  leadName: 'Orla Vance',
  pin: '4821',
  pinAgain: '4821',
}
const complete = {
  ...filled,
  settings: {
    ...filled.settings,
    units: [{ id: 1, code: '12', name: '', mandatory: true }],
    laboratory: 'Basin Laboratory',
  },
}

test('a code is suggested out of the name, in characters that are not misread by hand', () => {
  expect(suggestedCode('Kestrel Valley')).toBe('KET')
  expect(StationCode.safeParse(suggestedCode('Bitter Creek Road')).success).toBe(true)
})

test('with the usual settings a lead types eleven answers and has a station the desk accepts', () => {
  const command = commandOf(complete)
  expect(deskApi['station.setUp'].input.safeParse(command).success).toBe(true)
  expect(command).toMatchObject({ season: '26', letter: 'A', date: '2026-11-14' })
})

test('a station without a unit or a laboratory is not sent', () => {
  expect(commandOf(filled)).toBeUndefined()
  const wrong = steps.flatMap((step) => Object.keys(errorsOf(filled, step)))
  expect(wrong).toEqual(['units', 'laboratory'])
})

test('every field of the form belongs to one step', () => {
  const plain = steps.flatMap((step) => step.plain)
  const { settings, ...rest } = complete
  expect(plain.toSorted()).toEqual(Object.keys(rest).toSorted())
  const inSteps = steps.flatMap((step) => step.settings)
  const { ages: _, ...fields } = settings
  expect(inSteps.toSorted()).toEqual([...Object.keys(fields), 'species'].toSorted())
})
