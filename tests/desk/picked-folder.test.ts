import { copyFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { expect, test } from 'vitest'
import { tempFolder, tempLog } from '../db/temp-log.ts'
import { TestDesk } from '../support/desk.ts'

test('logs are merged from a folder that was picked outside the screens, and no screen learns its path', async () => {
  const picked = tempFolder()
  const log = tempLog()
  log.close()
  copyFileSync(log.path, join(picked, 'north.stationlog'))
  const desk = new TestDesk()
  desk.desk.offerLogsFolder(picked)
  const { places } = await desk.ask('merge.look', {})
  expect(places.map(({ words, files }) => [words, files.map(({ file }) => file)])).toEqual([
    [`Folder ${basename(picked)}, picked`, ['north.stationlog']],
  ])
  expect(JSON.stringify(places)).not.toContain(picked)
  await desk.end()
})
