/** The end of an afternoon at a station, and the papers that come out of it. */
import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import type { BagNumber, CoolerNumber } from '../../../shared-types/sample-number.ts'
import {
  type Crew,
  type TestDesk,
  checkIn,
  openCooler,
  openStation,
  sampleBoth,
} from '../../support/desk.ts'
import { press } from './hands.ts'

export interface Afternoon {
  readonly desk: TestDesk
  readonly crew: Crew
  /** Left and right of the first animal, then of the second: sealed, and still on the bench. */
  readonly bags: readonly BagNumber[]
  /** North 1, on ice, open and empty. */
  readonly cooler: CoolerNumber
}

/** Two deer sampled on both sides one after the other, and an empty cooler on ice. */
export async function afternoon(): Promise<Afternoon> {
  const { desk, crew } = await openStation()
  const bags: BagNumber[] = []
  for (let deer = 0; deer < 2; deer += 1) {
    const sampled = await sampleBoth(desk, await checkIn(desk), crew.sampler)
    bags.push(...sampled.bags)
  }
  return { desk, crew, bags, cooler: await openCooler(desk) }
}

export async function placeBags(desk: TestDesk, bags: readonly BagNumber[], cooler: CoolerNumber) {
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
}

/** The bytes of what a key saves to the disk. */
export async function saved(page: Page, key: string): Promise<{ name: string; bytes: Uint8Array }> {
  const download = page.waitForEvent('download')
  await press(page, key)
  const file = await download
  return { name: file.suggestedFilename(), bytes: new Uint8Array(readFileSync(await file.path())) }
}
