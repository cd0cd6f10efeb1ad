import { expect, test } from 'vitest'
import { usualLineSettings } from '../../../electron/station/line-settings.ts'
import { lineDraftOf } from '../../../renderer/station/line-draft.ts'
import { draftOf, readSettings } from '../../../renderer/station/settings-draft.ts'
import { typedNumber } from '../../../renderer/station/typed-number.ts'
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

test('how the line runs, looked at and saved unchanged, is the same', () => {
  const settled = { ...settings, line: usualLineSettings }
  expect(readSettings(draftOf(settled))).toEqual({ ok: true, settings: settled })
})

test('what is wrong about the line is said at its own field', () => {
  const line = {
    ...lineDraftOf(usualLineSettings),
    deer: '0',
    opens: '7 o’clock',
    profile: '07:00 1, 09:00 many',
  }
  const read = readSettings({ ...draftOf(settings), line })
  if (read.ok) throw new Error('it was taken')
  expect(Object.keys(read.errors)).toEqual(['line'])
  expect(Object.keys(read.lineErrors).toSorted()).toEqual(['deer', 'opens', 'profile'])
})

test('a day’s profile is typed as times and numbers', () => {
  const line = { ...lineDraftOf(usualLineSettings), profile: '08:00 1, 10:00 3,16:00  6' }
  const read = readSettings({ ...draftOf(settings), line })
  expect(read.ok && read.settings.line?.profile).toEqual([
    { from: '08:00', weight: 1 },
    { from: '10:00', weight: 3 },
    { from: '16:00', weight: 6 },
  ])
})
