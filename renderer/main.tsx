import './theme/colours.css'
import './theme/base.css'
import { StrictMode } from 'react'
import { createRoot } from 'react-dom/client'
import { App } from './app.tsx'
import { connect } from './bridge/connect.ts'
import { DeskProvider } from './desk/desk-provider.tsx'
import { listenToKeyboard } from './scanner/keyboard.ts'
import { keepLight } from './theme/light.ts'

const home = document.getElementById('screens')
if (home === null) throw new Error('the page has no place for the screens')

keepLight()
listenToKeyboard()
createRoot(home).render(
  <StrictMode>
    <DeskProvider connection={connect()}>
      <App />
    </DeskProvider>
  </StrictMode>,
)
