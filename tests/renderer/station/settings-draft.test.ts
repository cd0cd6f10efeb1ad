import { expect, test } from 'vitest'
import { draftOf, readSettings, typedNumber } from '../../../renderer/station/settings-draft.ts'
import { settings } from '../../support/desk.ts'

test('settings looked at and saved unchanged are the same settings', () => {
  expect(readSettings(draftOf(settings))).toEqual({ ok: true, settings })
})

test('numbers are taken with a comma, a point, or a real minus sign', () => {
  expect(typedNumber('-18,5')).toBe(-18.5)
  expect(typedNumber('−18.5')).toBe(-18.5)
  expect(typedNumber(' 48 ')).toBe(48)
  expect(typedNumber('soon')).toBe('soon')
  expect(typedNumber('')).toBe('')
})

test('what is wrong is said at its own field', () => {
  const draft = draftOf(settings)
  const none = { 'white-tailed-deer': [], 'mule-deer': [], elk: [], moose: [] }
  const read = readSettings({
    ...draft,
    ages: none,
    limits: { ...draft.limits, frozen: { low: '-10', high: '-40' } },
    holdHours: '',
  })
  if (read.ok) throw new Error('it was taken')
  expect(Object.keys(read.errors).toSorted()).toEqual(['holdHours', 'limits', 'species'])
})
