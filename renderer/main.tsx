import './theme/colours.css'
import './theme/base.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { deskFault } from '../shared-types/bridge.ts'
import { App } from './app.tsx'
import { connect } from './bridge/connect.ts'
import { DeskProvider } from './desk/desk-provider.tsx'
import { FaultBoundary } from './frame/fault.tsx'
import { listenToKeyboard } from './scanner/keyboard.ts'
import { sayRefused } from './scanner/strip.ts'
import { keepLight } from './theme/light.ts'

const home = document.getElementById('screens')
if (home === null) throw new Error('the page has no place for the screens')

// A command whose answer could not be read is a bug; the person must not take silence for done.
window.addEventListener('unhandledrejection', () => sayRefused(deskFault))
keepLight()
listenToKeyboard()
createRoot(home).render(
  <StrictMode>
    <DeskProvider connection={connect()}>
      <FaultBoundary>
        <App />
      </FaultBoundary>
    </DeskProvider>
  </StrictMode>,
)
