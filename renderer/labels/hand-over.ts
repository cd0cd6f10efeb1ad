/** What is done with labels that the desk has made. */
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { openPdf } from '../parts/pdf.ts'

/** Opens the PDF, unless the labels are on their way to a printer; answers with what to say of it. */
export function takeLabels({ pdf, sentTo }: CallOutput<'labels.printCooler'>): string {
  if (sentTo !== null) return `On the way to ${sentTo}.`
  openPdf(pdf)
  return 'Print the page that opened, at its true size (100%).'
}
