import { type FormEvent, useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import {
  type TissueCheck,
  type TissueSite,
  checkWords,
  siteWords,
} from '../../shared-types/tissue.ts'
import type { AnimalView, SiteView } from '../../shared-types/views/animal.ts'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Notice } from '../parts/notice.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { BenchStep } from './bench-step.tsx'
import { CutFace } from './cut-face.tsx'
import { useSealByScan } from './seal-bag.ts'
import { sentence } from './sentence.ts'

/** What each looks and feels like. Common practice, no source, except the gland: North Dakota GF. */
const signs: Record<TissueCheck, string> = {
  'lymph-node': 'firm and smooth; paler spots under the rim',
  'salivary-gland': 'lobules, like chewed gum',
  muscle: 'fibres, even and red',
  fat: 'pale, soft, greasy',
  obex: 'the V on the brainstem, in one piece',
  unsure: 'goes as unsure rather than lost',
}

const nodeChecks = ['lymph-node', 'salivary-gland', 'muscle', 'fat', 'unsure'] as const
const obexChecks = ['obex', 'unsure'] as const

function checksAt(site: TissueSite): readonly TissueCheck[] {
  return site === 'obex' ? obexChecks : nodeChecks
}

function optionsAt(site: TissueSite) {
  return checksAt(site).map((value, place) => ({
    value,
    label: (
      <>
        <CutFace check={value} />
        {checkWords[value]}
      </>
    ),
    hint: signs[value],
    key: String(place + 1),
  }))
}

export type Verdict = CallOutput<'tissue.check'>

/** The look at the cut face: what the sampler sees decides whether the tissue may be bagged. */
export function Look(props: {
  animal: AnimalView
  site: SiteView
  verdict: Verdict | null
  onVerdict: (verdict: Verdict) => void
  onMiss: () => void
}) {
  const { animal, site, verdict } = props
  const [seen, setSeen] = useState<TissueCheck | null>(null)
  const [size, setSize] = useState('')
  const { tell, busy, refusal } = useTell('tissue.check')
  const sealRefusal = useSealByScan(animal, site, () => {})
  async function judge(check: TissueCheck) {
    const sizeMm = size.trim() === '' ? null : Number(size)
    const answer = await tell({ animal: animal.animal, site: site.site, check, sizeMm })
    if (!answer.ok) return sayRefused(answer.refusal)
    if (answer.value.good) sayDone(answer.value.advice)
    else sayRefused({ say: 'Not to be bagged.', next: answer.value.advice })
    props.onVerdict(answer.value)
  }
  function submit(event: FormEvent) {
    event.preventDefault()
    if (seen !== null && !busy) void judge(seen)
  }
  return (
    <BenchStep
      title={`${sentence(siteWords[site.site])}: look at the cut face`}
      refusal={refusal ?? sealRefusal}
      focused
    >
      <form className="bench-look" onSubmit={submit}>
        {verdict && !verdict.good && !sealRefusal && <Notice kind="warn">{verdict.advice}</Notice>}
        <Choice
          label="What do you see and feel?"
          options={optionsAt(site.site)}
          value={seen}
          onChange={setSeen}
          autoFocus
        />
        <div className="row bench-judge">
          <Button
            kind="main"
            type="submit"
            keyHint="Enter"
            isDisabled={seen === null}
            why="choose first"
          >
            That is what I see
          </Button>
          <TextEntry
            label="Longest side, mm (optional)"
            value={size}
            onChange={setSize}
            inputMode="numeric"
            maxLength={3}
            error={/^\d*$/.test(size.trim()) ? undefined : 'whole millimetres'}
          />
          <Button keyHint="Alt+M" onPress={props.onMiss}>
            Not taken
          </Button>
        </div>
        <p className="small-print">
          Drawings ours; signs are common practice, no source (gland: North Dakota GF, sampling kit
          page).
        </p>
      </form>
    </BenchStep>
  )
}
