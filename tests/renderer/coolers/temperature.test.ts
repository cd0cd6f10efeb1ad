import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  bothScales,
  celsiusToFahrenheit,
  fahrenheitToCelsius,
  readTemperature,
} from '../../../renderer/coolers/temperature.ts'

describe('temperatures on the screen', () => {
  // NIST Special Publication 811 (2008), appendix B.8: t/°C = (t/°F − 32)/1.8 (from memory).
  it.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [98.6, 37],
  ])('says that %d °F are %d °C', (fahrenheit, celsius) => {
    expect(fahrenheitToCelsius(fahrenheit)).toBeCloseTo(celsius, 9)
    expect(celsiusToFahrenheit(celsius)).toBeCloseTo(fahrenheit, 9)
  })

  it.each([
    ['4', 4],
    [' 3.5 ', 3.5],
    ['3,5 °C', 3.5],
    ['-18', -18],
    ['−18', -18],
    ['39F', 3.9],
    ['39 °f', 3.9],
    ['0F', -17.8],
    ['31.9F', -0.1],
    ['32F', 0],
  ])('reads %s as %d °C', (text, celsius) => {
    expect(readTemperature(text)).toBe(celsius)
  })

  it.each(['', 'cold', '4 5', 'F', '39K', '--4', '4.', '1e2'])(
    'reads nothing out of "%s"',
    (text) => {
      expect(readTemperature(text)).toBeNull()
    },
  )

  it('shows both scales, with a minus that cannot be overlooked', () => {
    expect(bothScales(3.9)).toBe('3.9 °C (39 °F)')
    expect(bothScales(-18)).toBe('−18.0 °C (0 °F)')
    expect(bothScales(-20)).toBe('−20.0 °C (−4 °F)')
    expect(bothScales(0)).toBe('0.0 °C (32 °F)')
  })

  it('reads back to a tenth what it showed in Celsius, whatever the thermometer said', () => {
    fc.assert(
      fc.property(fc.integer({ min: -900, max: 600 }), (tenths) => {
        const celsius = tenths / 10
        expect(readTemperature(bothScales(celsius).split(' (')[0] ?? '')).toBe(celsius)
      }),
    )
  })
})
