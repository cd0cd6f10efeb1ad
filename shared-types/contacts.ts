/** How to reach hunters, kept sealed apart from the log until results are told. */
import { z } from 'zod'
import { LocalDate } from './local-date.ts'

/** What is read aloud and typed by a tired person: words are better than signs. */
export const Passphrase = z
  .string()
  .trim()
  .min(12, 'a passphrase has at least 12 characters: four words you can remember')
  .max(200)

/** A passphrase now opens the contacts on any laptop; it is nowhere in the log. */
export const PassphraseSet = z.strictObject({})

/** Contacts of animals up to a day were erased for good. The entries keep their digests. */
export const ContactsPurged = z.strictObject({ upTo: LocalDate, contacts: z.int().min(0) })
