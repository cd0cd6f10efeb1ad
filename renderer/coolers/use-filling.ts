/** Scan after scan at the coolers: a cooler's label chooses it, anything else is a bag to put in. */
import { useCallback, useEffect, useRef, useState } from 'react'
import type { Bridge } from '../../shared-types/bridge.ts'
import { type Result, granted, refused } from '../../shared-types/result.ts'
import {
  CoolerNumber,
  grouped,
  numberParts,
  readSampleNumber,
} from '../../shared-types/sample-number.ts'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { go, usePlace } from '../desk/place.ts'
import { type ScanHandler, useScan } from '../scanner/scans.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** What became of one scan. */
export interface Echo {
  readonly id: number
  readonly text: string
  readonly word: 'in' | 'chosen' | 'not done'
  readonly say: string
  readonly next: string
}

/** Several are kept in sight, since a refusal must not vanish behind the next good scan. */
const shownEchoes = 4

/** The cooler that bags go into now. */
export interface Filling {
  readonly cooler: CoolerNumber
  readonly name: string
}

/** The cooler that the address names, if it names one. */
export function useNamedCooler(): CoolerNumber | undefined {
  return CoolerNumber.safeParse(usePlace().number).data
}

/** Chooses the cooler that is being filled. */
export function chooseCooler(cooler: CoolerNumber): void {
  go('coolers', cooler)
}

/**
 * Takes this screen's scans in the order in which they came, one finished before the next, so that a
 * bag scanned right after a cooler's label goes into that cooler.
 */
export function useFilling(filling: Filling | undefined): {
  readonly echoes: readonly Echo[]
  readonly take: ScanHandler
} {
  const bridge = useConnection()
  const [echoes, setEchoes] = useState<readonly Echo[]>([])
  const queue = useRef(Promise.resolve())
  const into = useRef(filling)
  useEffect(() => {
    into.current = filling
  }, [filling])
  const work = useCallback(
    async (text: string) => {
      const answer = await takeScan(bridge, text, into)
      setEchoes((before) => [echoOf(text, answer, before), ...before].slice(0, shownEchoes))
      if (answer.ok) sayDone(`${shownText(text)} ${answer.value.say}`)
      else sayRefused(answer.refusal)
    },
    [bridge],
  )
  const take = useCallback<ScanHandler>(
    (text) => {
      if (isForAnother(text)) return 'not-mine'
      queue.current = queue.current.then(() => work(text))
    },
    [work],
  )
  useScan(take)
  return { echoes, take }
}

/** A person's badge is never meant for a cooler. */
function isForAnother(text: string): boolean {
  const read = readSampleNumber(text)
  return read.ok && numberParts(read.value).part === 'P'
}

interface Into {
  current: Filling | undefined
}

/** What was done: in one word, and in words to be read after the number. */
interface Done {
  readonly word: 'in' | 'chosen'
  readonly say: string
}

async function takeScan(bridge: Bridge, text: string, into: Into): Promise<Result<Done>> {
  const read = readSampleNumber(text)
  if (!read.ok) return read
  const label = CoolerNumber.safeParse(read.value)
  if (label.success) return choose(bridge, label.data, into)
  if (into.current === undefined)
    return refused(
      'no-cooler-chosen',
      'No cooler is chosen.',
      'Scan the label of the cooler first.',
    )
  const { cooler, name } = into.current
  const placed = await callDesk(bridge, 'bag.place', { bag: read.value, cooler })
  return placed.ok ? granted({ word: 'in', say: `is in ${name}.` }) : placed
}

async function choose(bridge: Bridge, cooler: CoolerNumber, into: Into): Promise<Result<Done>> {
  const inside = await callDesk(bridge, 'cooler', { cooler })
  if (!inside.ok) return inside
  const { name } = inside.value.cooler
  into.current = { cooler, name }
  chooseCooler(cooler)
  return granted({ word: 'chosen', say: `is ${name}, chosen now.` })
}

function shownText(text: string): string {
  const read = readSampleNumber(text)
  return read.ok ? grouped(read.value) : text.slice(0, 40)
}

function echoOf(text: string, answer: Result<Done>, before: readonly Echo[]): Echo {
  const scan = { id: (before[0]?.id ?? 0) + 1, text: shownText(text) }
  if (answer.ok) return { ...scan, ...answer.value, next: '' }
  return { ...scan, word: 'not done', say: answer.refusal.say, next: answer.refusal.next }
}
