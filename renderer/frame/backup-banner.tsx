import { nothing, useAsk } from '../desk/use-desk.ts'
import { Shape } from '../parts/shape.tsx'
import { Time } from '../parts/time.tsx'
import './banners.css'

/** Stands while the chosen place does not take the backups. */
export function BackupBanner() {
  const backup = useAsk('backup', nothing).data
  const trouble = backup?.trouble
  return (
    <div role="status">
      {backup && trouble && (
        <p className="backup-banner">
          <Shape kind="soon" /> <strong>{trouble.say}</strong> {trouble.next}
          {backup.last && (
            <>
              {' '}
              Last good copy: <Time ms={backup.last.atMs} />.
            </>
          )}
        </p>
      )}
    </div>
  )
}
