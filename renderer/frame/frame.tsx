import { Activity, type ReactNode, useEffect } from 'react'
import type { WhoView } from '../../shared-types/views/people.ts'
import { usePlace } from '../desk/place.ts'
import { CameraScanner } from '../camera/camera-scanner.tsx'
import { useHere } from '../desk/use-here.ts'
import { HelpRoom } from '../help/help-room.tsx'
import { Tour } from '../help/tour.tsx'
import { PracticeBar } from '../practice/live-bar.tsx'
import { ScanStrip } from '../scanner/scan-strip.tsx'
import { clearStrip } from '../scanner/strip.ts'
import { SignInScreen } from '../sign-in/sign-in-screen.tsx'
import { TakeBack } from '../take-back/take-back.tsx'
import { BackupBanner } from './backup-banner.tsx'
import { PdfOffer, ReachBanner } from './banners.tsx'
import { FaultBoundary } from './fault.tsx'
import './frame.css'
import { ReadOnlyBanner } from './read-only-banner.tsx'
import { ScreenKeys } from './screen-keys.tsx'
import { screenWords } from './screens.ts'
import { TopBand } from './top-band.tsx'

/**
 * What stands around every screen of an open log. While nobody is signed in the screen behind is
 * kept as it was, so that a change of person loses nothing that was half typed.
 */
export function Frame(props: { who: WhoView; children: ReactNode }) {
  const { who } = props
  const { screen } = usePlace()
  const isSignedIn = who.person !== null
  useHere(isSignedIn)
  useEffect(() => {
    // Where the screen changes, not where this window opens.
    return () => clearStrip()
  }, [screen])
  const title = isSignedIn ? screenWords(screen) : 'Sign in'
  useEffect(() => {
    document.title = `${title} · ${who.station.name} · Duskline`
  }, [title, who.station.name])
  return (
    <div className="frame">
      <header>
        {who.station.practice && <PracticeBar />}
        <TopBand who={who} />
        {isSignedIn && <ScreenKeys who={who} />}
        <div className="horizon" />
        {isSignedIn && <Tour />}
        <ReachBanner />
        <BackupBanner />
        <ReadOnlyBanner />
      </header>
      <main className="frame-screen" data-tour="screen">
        <Activity mode={isSignedIn ? 'visible' : 'hidden'}>
          <FaultBoundary key={screen}>{props.children}</FaultBoundary>
        </Activity>
        {!isSignedIn && <SignInScreen />}
      </main>
      <footer>
        <PdfOffer />
        <div className="strip-row" data-tour="strip">
          <ScanStrip />
          {isSignedIn && <CameraScanner />}
          {isSignedIn && <TakeBack />}
        </div>
      </footer>
      <HelpRoom />
    </div>
  )
}
