import { expect, test } from 'vitest'
import { placeOf } from '../../../renderer/desk/place.ts'
import { DeskId, coolerNumber } from '../../../shared-types/sample-number.ts'

test('an address names a screen and the number it is about', () => {
  const cooler = coolerNumber(DeskId.parse('26KRVA'), 3)
  expect(placeOf(`#coolers/${cooler}`)).toEqual({ screen: 'coolers', number: cooler })
})

test('an address that means nothing leads to the line, and a wrong number is left out', () => {
  expect(placeOf('')).toEqual({ screen: 'line', number: undefined })
  expect(placeOf('#nowhere')).toEqual({ screen: 'line', number: undefined })
  expect(placeOf('#kits/26KRVA0001K0')).toEqual({ screen: 'kits', number: undefined })
})
