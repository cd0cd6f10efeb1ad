import { BladeCaution, BleachCaution } from '../bench/cautions.tsx'
import { CutFace } from '../bench/cut-face.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Shape } from '../parts/shape.tsx'
import { checkWords } from '../../shared-types/tissue.ts'
import { HeadBelow } from './head-below.tsx'
import { HeadSide } from './head-side.tsx'
import './tissue-guide.css'
import { guideWords as words } from './words.ts'

const faces = ['lymph-node', 'salivary-gland', 'muscle', 'fat'] as const

/** Where to cut and what to look for, for whoever has seen it once and wants to see it again. */
export function TissueGuide(props: { onClose: () => void }) {
  return (
    <Dialog title={words.title} onClose={props.onClose} isWide>
      <div className="guide-heads">
        <figure>
          <figcaption>{words.below.title}</figcaption>
          <HeadBelow />
          <p className="guide-hands">{words.below.hands}</p>
        </figure>
        <div className="stack">
          <figure>
            <figcaption>{words.side.title}</figcaption>
            <HeadSide />
          </figure>
          <ol className="guide-steps">
            {words.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
        </div>
      </div>
      <section aria-label={words.faces.title}>
        <h3>{words.faces.title}</h3>
        <p className="field-hint">{words.faces.scale}</p>
        <ul className="guide-faces">
          {faces.map((check, place) => (
            <li key={check} className={place === 0 ? 'guide-good' : ''}>
              <CutFace check={check} />
              <p className="guide-verdict">
                <Shape kind={place === 0 ? 'fine' : 'now'} />{' '}
                {place === 0 ? words.faces.good : words.faces.bad}
              </p>
              <h4>{checkWords[check]}</h4>
              <p>{words.signs[check]}</p>
            </li>
          ))}
        </ul>
      </section>
      <div className="guide-cautions">
        <BladeCaution />
        <BleachCaution />
      </div>
      <p className="small-print">{words.sources}</p>
    </Dialog>
  )
}
