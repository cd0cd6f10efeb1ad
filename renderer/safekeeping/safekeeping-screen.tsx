import { Button } from '../parts/button.tsx'
import { BackupPanel } from './backup-panel.tsx'
import { ContactsPanel } from './contacts-panel.tsx'
import { MovePanel } from './move-panel.tsx'
import { ReportPanel } from './report-panel.tsx'
import './safekeeping.css'

/** What happens when the laptop is dropped, stolen or replaced; and when results are told. */
export function SafekeepingScreen(props: { onClose: () => void }) {
  return (
    <div className="safekeeping">
      <header className="row">
        <h1>Safekeeping</h1>
        <Button keyHint="Esc" onPress={props.onClose}>
          Back to the station
        </Button>
      </header>
      <div className="safekeeping-panels">
        <BackupPanel />
        <ContactsPanel />
        <MovePanel onMoved={props.onClose} />
        <ReportPanel />
      </div>
    </div>
  )
}
