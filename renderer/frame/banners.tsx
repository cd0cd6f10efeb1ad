import { useReach } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { putPdfAway, saveUrl, useReadyPdf } from '../parts/pdf.ts'
import { Shape } from '../parts/shape.tsx'
import './banners.css'

/** Shown on every screen of a practice day: a striped band with the word, not colour alone. */
export function PracticeBand() {
  return (
    <p className="practice-band">
      <strong>PRACTICE</strong> An invented day: nothing here is real, and nothing leaves it.
    </p>
  )
}

/** Stands while the desk does not answer; what is on the screen may be old. */
export function ReachBanner() {
  const isReachable = useReach()
  return (
    <div role="alert">
      {!isReachable && (
        <p className="reach-banner">
          <Shape kind="now" /> <strong>The desk is not answering.</strong> What you see may be old.
          Wait a moment; if it goes on, start Duskline again. What was confirmed is kept.
        </p>
      )}
    </div>
  )
}

/** Offers the last PDF for saving, or once more for looking at. */
export function PdfOffer() {
  const ready = useReadyPdf()
  if (ready === undefined) return null
  return (
    <div className="pdf-offer" role="status">
      <span>
        <strong>{ready.name}</strong> is open in a tab of its own.
      </span>
      <Button keyHint="Alt+O" onPress={() => window.open(ready.url, '_blank', 'noopener')}>
        Open again
      </Button>
      <Button keyHint="Alt+S" onPress={() => saveUrl(ready.name, ready.url)}>
        Save the PDF
      </Button>
      <Button keyHint="Alt+W" onPress={putPdfAway}>
        Put away
      </Button>
    </div>
  )
}
