/** The file of a logger that lay in a cooler all day, as its own program would write it. */
import { localIso } from '../local-time.ts'
import type { Box, Floor } from './floor.ts'

const everyMinutes = 20
/** How long a cooler stays warm after its lid was left open. */
const warmFor = 30

/** The first cooler's logger is read at dusk. */
export function importLogger(floor: Floor): void {
  const [box] = floor.boxes
  if (!box) return
  floor.tell(floor.helper(), 'logger.import', {
    cooler: box.cooler,
    file: `${box.name.toLowerCase().replace(' ', '-')}.csv`,
    text: loggerText(floor, box),
    reading: {
      timeColumn: 0,
      temperatureColumn: 1,
      skipLines: 1,
      dateOrder: 'year-month-day',
      unit: 'C',
      zone: floor.frame.zone,
    },
  })
}

function loggerText(floor: Floor, { name }: Box): string {
  const lines = [`time,${name} in C`]
  for (let minute = everyMinutes; minute < floor.agenda.now; minute += everyMinutes)
    lines.push(`${timeAt(floor, minute)},${degreesAt(floor, minute)}`)
  return `${lines.join('\n')}\n`
}

/** Local time without its offset, as most loggers write it. */
function timeAt(floor: Floor, minute: number): string {
  return localIso(floor.msAt(minute), floor.frame.zone).slice(0, 19).replace('T', ' ')
}

function degreesAt({ shape, chance }: Floor, minute: number): string {
  const isWarm = Math.abs(minute - shape.warmReading) <= warmFor / 2
  return (isWarm ? chance.between(9, 11) : chance.between(1.8, 5.2)).toFixed(1)
}
