import { copyFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { logsIn } from '../support/raw-log.ts'
import { leadPin, setUpInput, settings, TestDesk } from '../support/desk.ts'

let desk: TestDesk
beforeEach(() => {
  desk = new TestDesk()
})
afterEach(() => desk.end())

const next = { ...setUpInput, name: 'Second Table', letter: 'C' }

describe('a station is set up', () => {
  test('by its first lead, who sits at the window then, with the day open and the kits in stock', async () => {
    const { lead } = await desk.ask('station.setUp', setUpInput)
    const who = await desk.ask('who', {})
    expect(who.person).toMatchObject({ person: lead, name: 'Orla Vance', role: 'lead', duty: 'on' })
    expect(who.station).toMatchObject({ desk: '26KRVA', name: 'Cinder Gap', practice: false })
    expect(who.day).toEqual({ date: '2026-11-14', state: 'open' })
    const { balances, labels } = await desk.ask('kits', {})
    expect(balances.find(({ key }) => key === 'stock')?.count).toBe(100)
    expect(labels.blanks).toBe(1000)
  })

  test('in a file that says which desk it is', async () => {
    await desk.ask('station.setUp', setUpInput)
    expect(logsIn(desk.folder)).toEqual(['station-26KRVA-cinder-gap-2026-11-14.stationlog'])
  })

  test('once under one letter: a second log would print the same numbers again', async () => {
    await desk.ask('station.setUp', setUpInput)
    const again = { ...setUpInput, name: 'Cinder Gap II', date: '2026-11-15' as never }
    expect(await desk.code('station.setUp', again)).toBe('desk-already-set-up')
    await desk.ask('shelf.shut', {})
    expect(await desk.code('station.setUp', again)).toBe('desk-already-set-up')
    await desk.ask('station.setUp', next)
    expect(logsIn(desk.folder)).toHaveLength(2)
  })

  test('and not again under a letter whose log is torn: nobody knows what it has printed', async () => {
    await desk.ask('station.setUp', setUpInput)
    await desk.ask('shelf.shut', {})
    truncateSync(desk.file, 3000)
    expect(await desk.code('station.setUp', { ...setUpInput, name: 'Again' })).toBe(
      'desk-already-set-up',
    )
  })

  test('only with what can be: letters without look-alikes, a date near, each thing listed once', async () => {
    const wrong: [string, Partial<typeof setUpInput>][] = [
      ['station', { station: 'KRO' }],
      ['letter', { letter: 'I' }],
      ['season', { season: '2026' }],
      ['zone', { zone: 'America/Nowhere' }],
      ['kits', { kits: -1 }],
      ['kits', { kits: 1.5 }],
      ['date', { date: '2026-02-30' as never }],
      ['date', { date: '2062-11-14' as never }],
      ['lead.pin', { lead: { name: 'Orla Vance', pin: '12' } }],
      ['settings.units', { settings: { ...settings, units: [] } }],
      [
        'settings.tissues',
        {
          settings: {
            ...settings,
            tissues: [...settings.tissues, { site: 'left', kept: 'formalin' }],
          },
        },
      ],
      [
        'settings.limits.chilled',
        { settings: { ...settings, limits: { ...settings.limits, chilled: { low: 6, high: 0 } } } },
      ],
    ]
    for (const [field, changed] of wrong)
      expect((await desk.refusal('station.setUp', { ...setUpInput, ...changed })).field).toBe(field)
    expect(logsIn(desk.folder)).toEqual([])
  })
})

describe('the shelf', () => {
  test('asks for a log while none is open', async () => {
    expect(await desk.code('line', {})).toBe('no-log-open')
    expect(await desk.code('person.lock', {})).toBe('no-log-open')
    expect((await desk.ask('shelf.look', {})).open).toBeNull()
  })

  test('shows every log of the folder, and why one cannot be worked in', async () => {
    await desk.ask('station.setUp', setUpInput)
    await desk.ask('station.setUp', next)
    copyFileSync(desk.file, join(desk.folder, 'torn.stationlog'))
    truncateSync(join(desk.folder, 'torn.stationlog'), 5000)
    writeFileSync(join(desk.folder, 'foreign.stationlog'), 'Dear diary, today a bear came.')
    writeFileSync(join(desk.folder, 'letter.txt'), 'not a log at all')
    const { open, logs } = await desk.ask('shelf.look', {})
    expect(open).toBe('station-26KRVC-second-table-2026-11-14.stationlog')
    expect(logs.map(({ file, trouble }) => [file, trouble])).toEqual([
      ['foreign.stationlog', 'foreign.stationlog is not a station log.'],
      ['station-26KRVA-cinder-gap-2026-11-14.stationlog', null],
      ['station-26KRVC-second-table-2026-11-14.stationlog', null],
      ['torn.stationlog', expect.stringContaining('damaged')],
    ])
    expect(logs[1]).toMatchObject({ desk: '26KRVA', name: 'Cinder Gap', entries: 6 })
  })

  test('opens no torn, foreign, missing or far-away file, and keeps the one that is open', async () => {
    await desk.ask('station.setUp', setUpInput)
    await desk.ask('shelf.shut', {})
    copyFileSync(desk.file, join(desk.folder, 'torn.stationlog'))
    truncateSync(join(desk.folder, 'torn.stationlog'), 5000)
    writeFileSync(join(desk.folder, 'foreign.stationlog'), 'Dear diary, today a bear came.')
    const { lead } = await desk.ask('station.setUp', next)
    const open = (file: string) => desk.code('shelf.open', { file })
    expect(await open('foreign.stationlog')).toBe('not-a-station-log')
    expect(await open('torn.stationlog')).toBe('torn')
    expect(await open('gone.stationlog')).toBe('not-on-shelf')
    for (const away of ['../x.stationlog', '/etc/passwd', 'letter.txt', '..', '.'])
      expect(await open(away)).toBe('not-on-shelf')
    expect((await desk.ask('who', {})).person?.person).toBe(lead)
  })

  test('signs everybody out when another log is opened: people are known by their own log', async () => {
    const { lead } = await desk.ask('station.setUp', setUpInput)
    const first = (await desk.ask('shelf.look', {})).open ?? ''
    const window = desk.session
    desk.newWindow()
    await desk.as(lead, leadPin)
    await desk.ask('station.setUp', next)
    expect(window.person).toBeNull()
    await desk.ask('shelf.open', { file: first })
    expect((await desk.ask('who', {})).person).toBeNull()
    expect((await desk.ask('who', {})).station.desk).toBe('26KRVA')
  })

  test('puts the log away while a PIN is being checked, and says so', async () => {
    const { lead } = await desk.ask('station.setUp', setUpInput)
    desk.newWindow()
    const [signedIn] = await Promise.all([
      desk.desk.call(desk.session, 'person.signIn', { person: lead, pin: leadPin }),
      desk.desk.call(desk.session, 'shelf.shut', {}),
    ])
    expect(signedIn).toMatchObject({ ok: false, refusal: { code: 'no-log-open' } })
    expect(desk.session.person).toBeNull()
  })
})
