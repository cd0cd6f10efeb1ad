import type { ReactNode } from 'react'
import { BoardScreen } from './board/board-screen.tsx'
import { BenchScreen } from './bench/bench-screen.tsx'
import { CheckInScreen } from './check-in/check-in-screen.tsx'
import { CoverageScreen } from './coverage/coverage-screen.tsx'
import { CloseScreen } from './close/close-screen.tsx'
import { CoolersScreen } from './coolers/coolers-screen.tsx'
import { isBoard, type ScreenName, usePlace } from './desk/place.ts'
import { nothing, useAsk } from './desk/use-desk.ts'
import { ReachBanner } from './frame/banners.tsx'
import { Frame } from './frame/frame.tsx'
import { screenAt } from './frame/screens.ts'
import { HandoffScreen } from './handoff/handoff-screen.tsx'
import { KitsScreen } from './kits/kits-screen.tsx'
import { DiscrepanciesScreen } from './merge/discrepancies-screen.tsx'
import { LineScreen } from './line/line-screen.tsx'
import { RefusalNote } from './parts/refusal-note.tsx'
import { ResultsScreen } from './results/results-screen.tsx'
import { ShelfScreen } from './shelf/shelf-screen.tsx'
import { StationScreen } from './station/station-screen.tsx'
import { useChosenLight } from './theme/light.ts'

/** What each place shows. */
const screens: Record<ScreenName, () => ReactNode> = {
  line: LineScreen,
  'check-in': CheckInScreen,
  bench: BenchScreen,
  kits: KitsScreen,
  coolers: CoolersScreen,
  close: CloseScreen,
  handoff: HandoffScreen,
  station: StationScreen,
  coverage: CoverageScreen,
  results: ResultsScreen,
  discrepancies: DiscrepanciesScreen,
}

/** The shelf while no log is open, then the station's screens. */
export function App() {
  useChosenLight()
  const shelf = useAsk('shelf.look', nothing)
  const isOpen = typeof shelf.data?.open === 'string'
  if (shelf.data !== undefined && !isOpen) return <ShelfScreen shelf={shelf.data} />
  if (isOpen) return isBoard() ? <BoardScreen /> : <OpenLog />
  return (
    <main>
      <ReachBanner />
      <RefusalNote refusal={shelf.refusal} />
    </main>
  )
}

function OpenLog() {
  const who = useAsk('who', nothing, { everyMs: 60_000 })
  const { screen } = usePlace()
  if (who.data === undefined) return <RefusalNote refusal={who.refusal} />
  const Screen = screens[screenAt(who.data.station.office, screen)]
  return (
    <Frame who={who.data}>
      <Screen />
    </Frame>
  )
}
