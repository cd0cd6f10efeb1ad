import { Button } from '../parts/button.tsx'
import './help.css'
import { openHelp, openHelpHere } from './help.ts'
import { helpWords } from './words.ts'

/** The key to help, on every screen and in every dialog. */
export function HelpButton() {
  return (
    <Button keyHint="F1" isKeyEverywhere onPress={openHelpHere}>
      {helpWords.help}
    </Button>
  )
}

/** Leads from a refusal to the page that says why; F1 does the same. Nothing where it has no code. */
export function HelpLink({ code }: { readonly code: string }) {
  if (code === '') return null
  return (
    <button type="button" className="help-link" onClick={() => openHelp({ is: 'refusal', code })}>
      {helpWords.why}
    </button>
  )
}
