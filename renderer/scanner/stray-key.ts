/** A key that does nothing where the focus is: said, so that nobody takes it for done. */
import { sayRefused } from './strip.ts'

/** Says of a key pressed among tiles that none of them has it; anywhere else it is let pass. */
export function sayStray(key: string): void {
  const group = document.activeElement?.closest('fieldset.choice')?.querySelector('legend')
  // Space turns the tile itself.
  if (!group || key === ' ') return
  sayRefused({
    say: `${key.toUpperCase()} is no key of “${group.textContent}”.`,
    next: 'Press a key that is shown on its tiles; Enter or Tab moves on.',
  })
}
