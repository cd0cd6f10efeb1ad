import type { ReactNode } from 'react'
import type { TissueCheck } from '../../shared-types/tissue.ts'

/** Pale follicles of a node lie in a row just under its rim. Common practice, no source. */
const follicles = [
  [27, 46, 5],
  [30, 31, 5.5],
  [42, 21, 5],
  [57, 17, 5.5],
  [73, 18, 5],
  [88, 23, 5.5],
  [98, 34, 5],
  [98, 49, 5],
  [41, 58, 4.5],
  [85, 60, 4.5],
] as const

function Node() {
  return (
    <>
      <path
        className="cut-flesh cut-node"
        d="M16,46 C14,24 34,8 62,8 C92,8 110,24 109,46 C108,64 94,74 82,70 C74,67 70,58 62,58 C54,58 50,68 42,70 C28,73 17,62 16,46 Z"
      />
      <path
        className="cut-core"
        d="M40,44 C40,34 50,28 62,28 C76,28 86,34 86,44 C86,52 78,54 62,50 C48,54 40,52 40,44 Z"
      />
      {follicles.map(([x, y, radius]) => (
        <circle key={`${x} ${y}`} className="cut-pale" cx={x} cy={y} r={radius} />
      ))}
    </>
  )
}

/** Like chewed gum, in lobules: North Dakota Game and Fish, gf.nd.gov, sampling kit page. */
function SalivaryGland() {
  return (
    <>
      <path
        className="cut-flesh cut-gland"
        d="M14,40 C12,28 20,24 24,17 C30,8 41,14 47,10 C56,4 64,10 71,9 C82,7 88,14 95,17 C105,20 105,30 108,37 C112,47 104,52 101,59 C96,69 86,65 79,70 C70,76 62,69 54,71 C44,74 38,67 30,66 C20,64 16,52 14,40 Z"
      />
      <path
        className="cut-seam"
        d="M24,17 C32,26 34,30 32,40 M47,10 C48,20 54,26 52,36 M71,9 C70,20 74,26 72,34 M95,17 C88,24 90,30 88,38 M14,40 C22,38 27,42 32,40 C38,36 46,40 52,36 C58,32 66,38 72,34 C78,32 82,40 88,38 C96,36 102,40 108,37 M32,40 C30,50 34,58 30,66 M52,36 C50,50 58,58 54,71 M72,34 C70,48 80,56 79,70 M88,38 C90,48 96,52 101,59 M31,53 C40,50 46,56 53,53 M53,54 C62,50 68,58 75,54"
      />
    </>
  )
}

function Muscle() {
  const fibres = Array.from({ length: 12 }, (_, row) => 19 + row * 4.2)
  return (
    <>
      <path
        className="cut-flesh cut-muscle"
        d="M12,18 C40,8 84,8 108,16 C112,32 112,50 107,64 C80,72 40,72 13,63 C8,48 8,32 12,18 Z"
      />
      {fibres.map((y) => (
        <path key={y} className="cut-seam" d={`M19,${y} C44,${y - 3} 76,${y - 3} 101,${y}`} />
      ))}
    </>
  )
}

function Fat() {
  return (
    <>
      <path
        className="cut-flesh cut-fat"
        d="M14,44 C12,26 26,16 42,18 C52,6 76,8 84,18 C102,16 110,32 106,48 C104,66 84,72 68,66 C52,76 18,68 14,44 Z"
      />
      <path className="cut-seam" d="M32,34 C38,28 46,28 52,32 M66,30 C74,26 82,28 88,34" />
      <path className="cut-seam" d="M34,54 C42,58 52,58 58,54 M72,52 C80,56 90,54 94,48" />
    </>
  )
}

/** Brainstem from above: the V where the fourth ventricle closes. Common practice, no source. */
function Obex() {
  return (
    <>
      <path
        className="cut-flesh cut-node"
        d="M28,6 L92,6 C94,26 84,40 80,74 L40,74 C36,40 26,26 28,6 Z"
      />
      <path className="cut-seam cut-bold" d="M40,8 C46,26 56,38 60,48 C64,38 74,26 80,8" />
      <path className="cut-seam" d="M60,48 L60,74" />
      <circle className="cut-ring" cx="60" cy="48" r="11" />
    </>
  )
}

function Unsure() {
  return (
    <>
      <path
        className="cut-unknown"
        d="M18,42 C16,22 36,10 60,10 C86,10 106,22 104,42 C102,62 84,70 60,70 C36,70 20,62 18,42 Z"
      />
      <text className="cut-question" x="60" y="56">
        ?
      </text>
    </>
  )
}

const drawings: Record<TissueCheck, () => ReactNode> = {
  'lymph-node': Node,
  'salivary-gland': SalivaryGland,
  muscle: Muscle,
  fat: Fat,
  obex: Obex,
  unsure: Unsure,
}

/** Our own drawing of what a freshly cut face looks like; the words beside it carry the meaning. */
export function CutFace({ check }: { readonly check: TissueCheck }) {
  const Drawing = drawings[check]
  return (
    <svg className="cut-face" viewBox="0 0 120 80" aria-hidden="true" focusable="false">
      <Drawing />
    </svg>
  )
}
