import { useState } from 'react'
import type { ContactsView, SealState } from '../../shared-types/views/safekeeping.ts'
import { nothing, useAsk, useMay } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { PassphraseDialog } from './passphrase-dialog.tsx'
import { PurgeDialog } from './purge-dialog.tsx'

const sealWords: Record<SealState, string> = {
  none: 'No contact has been taken down yet.',
  'key-store': "Sealed; the key is with this computer's own key store.",
  beside:
    'Sealed; the key lies in a file on this laptop. A stick or backup tells nobody anything, but a stolen laptop would: set a passphrase and take the key off the disk.',
  memory: 'Sealed, and open until Duskline ends; after that the passphrase is needed.',
  locked: 'Sealed and locked on this laptop: type the passphrase to read them or add to them.',
}

/** How hunters can be reached: where the key is, and how the details end. */
export function ContactsPanel() {
  const { data } = useAsk('contacts', nothing)
  const [task, setTask] = useState<'set' | 'unlock' | 'purge'>()
  const close = () => setTask(undefined)
  if (data === undefined) return null
  return (
    <Panel title="Contact details" count={data.kept}>
      <p>{sealWords[data.seal]}</p>
      <p>
        {data.hasPassphrase
          ? 'A passphrase opens them on any laptop that has a copy of the log.'
          : 'No passphrase is set: on another laptop nobody could read them.'}
      </p>
      <Deeds view={data} onTask={setTask} />
      {task === 'purge' && <PurgeDialog onClose={close} />}
      {(task === 'set' || task === 'unlock') && <PassphraseDialog task={task} onClose={close} />}
    </Panel>
  )
}

function Deeds(props: { view: ContactsView; onTask: (task: 'set' | 'unlock' | 'purge') => void }) {
  const { view, onTask } = props
  const mayChange = useMay('contacts.setPassphrase')
  const mayUnlock = useMay('contacts.unlock')
  const why = 'a station lead does this'
  return (
    <div className="row">
      {view.seal === 'locked' ? (
        <Button kind="main" isDisabled={!mayUnlock} why={why} onPress={() => onTask('unlock')}>
          Unlock with the passphrase
        </Button>
      ) : (
        <Button isDisabled={!mayChange} why={why} onPress={() => onTask('set')}>
          {view.hasPassphrase ? 'Set a new passphrase' : 'Set a passphrase'}
        </Button>
      )}
      <Button kind="danger" isDisabled={!mayChange} why={why} onPress={() => onTask('purge')}>
        Erase after results are told
      </Button>
    </div>
  )
}
