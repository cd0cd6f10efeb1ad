import { expect, test } from 'vitest'
import { Agenda, type Process } from '../../electron/station/practice/agenda.ts'

function* bell(agenda: Agenda, name: string, every: number, heard: string[]): Process {
  for (let count = 0; count < 3; count += 1) {
    heard.push(`${agenda.now} ${name}`)
    yield every
  }
}

test('processes take turns by the clock, and at the same minute by who waited first', () => {
  const [agenda, heard] = [new Agenda(), [] as string[]]
  agenda.start(bell(agenda, 'slow', 10, heard))
  agenda.start(bell(agenda, 'fast', 5, heard))
  agenda.run()
  expect(heard).toEqual(['0 slow', '0 fast', '5 fast', '10 slow', '10 fast', '20 slow'])
})

test('a day that is cut off goes on from there', () => {
  const [agenda, heard] = [new Agenda(), [] as string[]]
  agenda.start(bell(agenda, 'slow', 10, heard))
  agenda.run(10)
  expect(heard).toEqual(['0 slow', '10 slow'])
  agenda.run()
  expect(heard).toEqual(['0 slow', '10 slow', '20 slow'])
})
