import { Choice } from '../parts/choice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import type { Asking } from './asking.ts'
import { Stop } from './stops.tsx'
import { TagSeen } from './tag-seen.tsx'

const consentOptions = [
  { value: 'given', label: 'yes', key: 'Y' },
  { value: 'refused', label: 'no', key: 'N' },
] as const

/** The hunter, the tag and the hunter's word: never filled in from the last animal. */
export function WhoFields({ draft, change, missing }: Asking) {
  return (
    <>
      <div className="line-of line-of-who">
        <Stop step="hunter">
          <TextEntry
            label="Hunter id"
            value={draft.hunter}
            onChange={(hunter) => change({ hunter })}
            error={missing.hunter}
            maxLength={30}
            numbers
            takesScan
            autoFocus
          />
        </Stop>
        <Stop step="tag">
          <TextEntry
            label="Tag"
            value={draft.tag}
            onChange={(tag) => change({ tag })}
            error={missing.tag}
            maxLength={30}
            numbers
            takesScan
          />
        </Stop>
        <Stop step="consent">
          <Choice
            label="Agrees to cutting"
            options={consentOptions}
            value={draft.consent}
            onChange={(consent) => change({ consent })}
            error={missing.consent}
          />
        </Stop>
      </div>
      <TagSeen tag={draft.tag} />
    </>
  )
}
