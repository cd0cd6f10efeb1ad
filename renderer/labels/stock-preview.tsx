import { stockNameOf, type LabelStock } from '../../shared-types/label-stock.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Notice } from '../parts/notice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { LabelPreview } from './label-preview.tsx'
import { CardCheck, useScreenScale } from './true-size.tsx'

/** What the labels of a kit look like on a stock, at their true size. */
export function StockPreview({ stock }: { readonly stock: LabelStock }) {
  const { data, refusal } = useAsk('stock.preview', { stock })
  const scale = useScreenScale()
  if (!data) return <RefusalNote refusal={refusal} />
  return (
    <section aria-label={`Labels on ${data.words}`} className="stock-preview">
      {data.refusal ? (
        <Notice kind="warn">
          {data.refusal.say} {data.refusal.next}
        </Notice>
      ) : (
        <p>
          One kit takes <b className="numbers">{data.kitLabels}</b> labels of it.
        </p>
      )}
      <div className="label-previews">
        {data.labels.map((label, place) => (
          <LabelPreview
            key={`${stockNameOf(stock)} ${place}`}
            label={label}
            widthMm={data.widthMm}
            heightMm={data.heightMm}
            scale={scale}
          />
        ))}
      </div>
      <CardCheck />
    </section>
  )
}
