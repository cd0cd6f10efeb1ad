/** Coverage of a season: 60,000 animals in forty units, sampled on both sides and reported. */
import { CoveragePlan } from '../../shared-types/coverage.ts'
import { connectionOf } from '../../db/connection.ts'
import { alikeAnimals } from '../../db/read/coverage.ts'
import { DeskId } from '../../shared-types/sample-number.ts'
import type { AnimalFacts } from '../../shared-types/animal.ts'
import { deskWith } from './desk.bench.ts'
import { fillWithFinished } from './long-log.ts'
import { alone, type Figure, ms, sideBySide } from './measure.ts'

const animals = 60_000
const units = Array.from({ length: 40 }, (_, at) => String(at + 1))
const species: readonly AnimalFacts['species'][] = ['white-tailed-deer', 'mule-deer', 'elk']

/** The long log has one kind of animal in one unit: spreads it over units and classes, and reports it. */
function spread(connection: ReturnType<typeof connectionOf>): void {
  const of = (list: readonly string[]) => JSON.stringify(list)
  connection.exec(`
    UPDATE animal SET
      unit = json_extract('${of(units)}', '$[' || (n.at % ${units.length}) || ']'),
      species = json_extract('${of(species)}', '$[' || (n.at / 7 % 3) || ']'),
      sex = CASE n.at % 2 WHEN 0 THEN 'male' ELSE 'female' END,
      age = CASE n.at % 3 WHEN 0 THEN 'yearling' ELSE 'adult' END
    FROM (SELECT animal AS one, row_number() OVER (ORDER BY animal) AS at FROM animal) n
    WHERE n.one = animal.animal;
    INSERT INTO sample_result (bag, animal, site, word, method, laboratory, hash, ms)
      SELECT bag, animal, site,
        CASE row_number() OVER (ORDER BY bag) % 200 WHEN 0 THEN 'detected' WHEN 1 THEN 'unsuitable'
          ELSE 'not-detected' END,
        'ELISA', 'invented', bag, 0
      FROM bag`)
}

const plan = CoveragePlan.parse({
  design: { prevalence: 0.01, sensitivity: 0.98, confidence: 0.95 },
  ages: ['yearling', 'adult'],
  weights: [],
  numbers: units.map((unit, at) => ({
    unit,
    species: 'mule-deer',
    population: 3000 + at * 50,
    harvested: null,
    goal: null,
  })),
})

export async function coverageFigures(): Promise<Figure[]> {
  const { desk, log, sampler } = await deskWith(animals / 2)
  for (const letter of ['H', 'J', 'K', 'M'])
    fillWithFinished(log, {
      desk: DeskId.parse(`26KRV${letter}`),
      animals: animals / 8,
      sampler,
      now: desk.now,
    })
  await desk.ask('coverage.plan', { plan })
  spread(connectionOf(log))
  const coverage = () => desk.desk.call(desk.session, 'coverage', {})
  const counting = () => alikeAnimals(log)
  await alone(2, coverage)
  const { ours, baseline } = await sideBySide(15, coverage, counting)
  const need = () =>
    desk.desk.call(desk.session, 'coverage.need', { unit: '7', species: 'mule-deer' })
  const forCheckIn = await alone(20, need)
  const { units: herds } = await desk.ask('coverage', {})
  const counted = herds.reduce(
    (sum, { classes }) => sum + classes.reduce((a, b) => a + b.checked, 0),
    0,
  )
  if (counted !== animals) throw new Error(`${counted} animals counted of ${animals}`)
  log.close()
  await desk.end()
  return [
    {
      what: `coverage of ${animals} animals, ${herds.length} units and species, results of both sides in (p50)`,
      figure: `${ms(ours.p50)} (p95 ${ms(ours.p95)}; of it the database's count ${ms(baseline.p50)})`,
      target: 'under 200 ms',
      met: ours.p50 < 200,
    },
    {
      what: 'what one unit still needs, asked at check-in in that record (p95)',
      figure: ms(forCheckIn.p95),
      target: 'reported',
      met: null,
    },
  ]
}
