import { expect, test } from 'vitest'
import {
  excursionsOf,
  gapsIn,
  insideDuring,
  meanKineticCelsius,
} from '../../electron/station/cold.ts'
import {
  fittedGain,
  iceLasts,
  iceToCool,
  latentHeat,
  meltHours,
  statedGain,
} from '../../electron/station/ice.ts'

const hour = 3_600_000
const hourly = (...degrees: number[]) =>
  degrees.map((celsius, place) => ({ ms: place * hour, celsius }))

// Mean kinetic temperature with 83.14472 kJ/mol and 8.314472 J/(mol·K), equal intervals: Compounding Today,
// newsletter 16-06. The figures were worked by hand from its formula.
test.each([
  [hourly(2, 8), 5.5364],
  [hourly(...Array.from({ length: 23 }, () => 5), 15), 5.7635],
  [hourly(...Array.from({ length: 10 }, () => 25)), 25],
])('mean kinetic temperature of the worked example %#', (points, celsius) => {
  expect(meanKineticCelsius(points)).toBeCloseTo(celsius, 3)
})

test('a reading stands for the time until the next, so that many warm readings of one minute do not weigh like hours', () => {
  const cold = hourly(...Array.from({ length: 10 }, () => 4))
  const flurry = [0, 1, 2, 3].map((minute) => ({ ms: 10 * hour + minute * 60_000, celsius: 20 }))
  expect(meanKineticCelsius([...cold, ...flurry])).toBeLessThan(10)
  expect(meanKineticCelsius([])).toBeNull()
})

// USP <659> as told by gmp-compliance.org: a mean over 52 weeks of 23.98 °C hid 30 days at 28.98 °C.
test('a long window hides a warm month, which is why window and peak are told beside it', () => {
  const year = hourly(...Array.from({ length: 365 }, (_, day) => (day < 30 ? 28.98 : 23.4)))
  expect(meanKineticCelsius(year)).toBeLessThan(25)
})

// Latent heat of fusion: 333.55 kJ/kg (NIST), 335 (NCERT, physlink.com ae487), commonly 334.
test('latent heat is the common rounding of the published values', () => {
  expect(latentHeat).toBeGreaterThan(333)
  expect(latentHeat).toBeLessThanOrEqual(335)
})

// physlink.com ae487: 2 kg of ice at 1000 W and 335 kJ/kg last 670 s.
test('two kilograms of ice at a kilowatt last eleven minutes', () => {
  expect(meltHours(2, 1000) * 3600 * (335 / latentHeat)).toBeCloseTo(670, 0)
})

// By hand: 5 kg × 334 kJ/kg / 10 W = 167,000 s = 46.4 h; 2 kg × 3.6 × 33 °C = 237.6 kJ = 0.711 kg of ice.
test('the examples worked by hand', () => {
  expect(meltHours(5, 10)).toBeCloseTo(46.4, 1)
  expect(iceToCool(2, 37, 4)).toBeCloseTo(0.711, 3)
})

// FAO, "Ice in fisheries" (t0713e, ch. 3): 10 kg of lean fish, 0.8 kcal/(kg·°C), from 25 °C takes 2.5 kg of ice at
// 80 kcal/kg. Our tissue has 3.6 kJ/(kg·°C) = 0.86 kcal/(kg·°C), so it takes a little more.
test('ice to cool tissue is near what is published for lean fish', () => {
  expect(iceToCool(10, 25, 0)).toBeGreaterThan(2.5)
  expect(iceToCool(10, 25, 0)).toBeLessThan(2.8)
})

test('how long ice lasts comes with a range, and a warmer day shortens it', () => {
  const at = (ambientC: number) =>
    iceLasts({ iceKg: 5, ambientC, gain: statedGain(0.5), tissueKg: 0, tissueC: 4 })
  const mild = at(20)
  expect(mild?.hours).toBeCloseTo(46.4, 1)
  expect(mild?.lowHours).toBeLessThan(40)
  expect(mild?.highHours).toBeGreaterThan(60)
  expect(at(30)?.hours).toBeLessThan(mild?.hours ?? 0)
  expect(at(-5)).toBeNull()
})

// Newton's law of cooling, worked forward: 10 kg at 3.9 kJ/(kg·°C), 1 W for each degree, air at 25 °C.
test('a heat gain is found again in the readings that it made', () => {
  const inside = (hours: number) => 25 - 24 * Math.exp(-(hours * 3600 * 1) / (10 * 3900))
  const points = hourly(...[0, 1, 2, 3, 4, 5].map(inside))
  const gain = fittedGain(points, 25, 10)
  expect(gain?.wattsPerDegree).toBeCloseTo(1, 2)
  expect(gain?.fittedFrom).toBe(6)
  expect(fittedGain(hourly(0, 0, 0, 0), 25, 10)).toBeNull()
})

// Twice a day without a recorder: vaccine storage guidance of the CDC, told by the AAP.
test('a gap is three usual intervals, half an hour at least and twelve hours at most', () => {
  const everyTen = [0, 10, 20, 30, 75, 85].map((minute) => ({ ms: minute * 60_000, celsius: 4 }))
  expect(gapsIn(everyTen)).toEqual([{ fromMs: 30 * 60_000, toMs: 75 * 60_000 }])
  expect(gapsIn(hourly(4, 4, 4))).toEqual([])
})

test('an excursion counts from the last good reading to the next, and marks who was inside then alone', () => {
  const points = [4, 4, 12, 14, 5].map((celsius, place) => ({
    ms: place * hour,
    celsius,
    excursion: celsius > 8,
  }))
  const [excursion] = excursionsOf(points)
  expect(excursion).toEqual({ fromMs: hour, toMs: 4 * hour, lowest: 12, highest: 14 })
  const stays = [
    { bag: 'before', fromMs: 0, toMs: hour },
    { bag: 'through', fromMs: 0, toMs: null },
    { bag: 'in the middle', fromMs: 2 * hour, toMs: 3 * hour },
    { bag: 'after', fromMs: 4 * hour, toMs: null },
  ]
  expect(insideDuring(stays, excursion ?? { fromMs: 0, toMs: 0 })).toEqual([
    'in the middle',
    'through',
  ])
})
