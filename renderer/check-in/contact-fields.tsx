import { useState } from 'react'
import { Button } from '../parts/button.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import type { Asking } from './asking.ts'
import { Stop } from './stops.tsx'

const fields = [
  { step: 'name', label: 'Name', inputMode: 'text', maxLength: 80 },
  { step: 'phone', label: 'Phone', inputMode: 'tel', maxLength: 40 },
  { step: 'email', label: 'E-mail', inputMode: 'email', maxLength: 120 },
] as const

/** How to reach the hunter: optional, and visibly kept apart from everything else. */
export function ContactFields({ draft, change, missing }: Asking) {
  const isFilled = fields.some(({ step }) => draft[step] !== '')
  const [isOpen, setOpen] = useState(isFilled)
  return (
    <section className="contact" aria-labelledby="contact-head">
      <div className="contact-head">
        <p>
          <strong id="contact-head">Contact, kept apart</strong> from the log: never on a label, in
          a list or with the courier, and erasable once results are told.
        </p>
        {!isOpen && (
          <Button keyHint="Ctrl+E" onPress={() => setOpen(true)}>
            Add (optional)
          </Button>
        )}
      </div>
      {isOpen && (
        <div className="line-of line-of-contact">
          {fields.map(({ step, ...field }) => (
            <Stop key={step} step={step}>
              <TextEntry
                {...field}
                value={draft[step]}
                onChange={(text) => change({ [step]: text })}
                error={missing[step]}
                autoFocus={step === 'name' && !isFilled}
              />
            </Stop>
          ))}
        </div>
      )}
    </section>
  )
}
