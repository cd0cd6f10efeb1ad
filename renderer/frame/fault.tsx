import { Component, type ReactNode } from 'react'
import { Button } from '../parts/button.tsx'
import { Shape } from '../parts/shape.tsx'
import './fault.css'

/** Keeps one screen's bug from taking the window with it. */
export class FaultBoundary extends Component<{ children: ReactNode }, { fault: boolean }> {
  override state = { fault: false }

  static getDerivedStateFromError(): { fault: boolean } {
    return { fault: true }
  }

  override render(): ReactNode {
    return this.state.fault ? <FaultNote /> : this.props.children
  }
}

function FaultNote() {
  return (
    <div role="alert" className="fault">
      <h1>
        <Shape kind="now" /> This screen met a fault of its own.
      </h1>
      <p>Nothing that was confirmed is lost. Load the screens again, or go to another one.</p>
      <Button kind="main" keyHint="Alt+R" onPress={() => window.location.reload()}>
        Load again
      </Button>
    </div>
  )
}
