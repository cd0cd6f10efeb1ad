import { guideWords } from './words.ts'

const words = guideWords.below

/** A bean with its hollow towards the larynx. */
const leftNode =
  'M262,212 C276,206 290,214 292,230 C294,246 284,258 270,256 C262,254 262,246 265,238 C267,230 258,226 258,220 C258,216 259,213 262,212 Z'

/** The head from below. The right half is drawn once and mirrored, so that left and right match. */
export function HeadBelow() {
  return (
    <svg className="guide-drawing" viewBox="-56 0 552 404" role="img" aria-label={words.alt}>
      <path
        className="guide-hide"
        d="M220,10 C240,10 254,22 260,46 C268,80 296,120 318,170 C334,206 336,238 330,268 C326,300 320,330 322,372 L118,372 C120,330 114,300 110,268 C104,238 106,206 122,170 C144,120 172,80 180,46 C186,22 200,10 220,10 Z"
      />
      <Half />
      <g transform="translate(440 0) scale(-1 1)">
        <Half />
      </g>
      <path className="guide-bone" d="M206,44 C208,30 232,30 234,44 L228,70 L212,70 Z" />
      <path
        className="guide-larynx"
        d="M220,188 C238,188 248,202 246,220 C245,236 238,248 236,256 L204,256 C202,248 195,236 194,220 C192,202 202,188 220,188 Z"
      />
      <path className="guide-larynx" d="M204,256 L236,256 L238,372 L202,372 Z" />
      {[274, 292, 310, 328, 346, 364].map((y) => (
        <path key={y} className="guide-ring" d={`M203,${y} C212,${y + 5} 228,${y + 5} 237,${y}`} />
      ))}
      <path className="guide-cut" d="M112,262 C150,282 186,288 220,288 C254,288 290,282 328,262" />
      <path className="guide-midline" d="M220,76 L220,182" />
      <Labels />
    </svg>
  )
}

/** The animal's left half, at the right of the drawing. */
function Half() {
  return (
    <>
      <path
        className="guide-bone"
        d="M232,50 C246,84 276,132 302,196 C308,214 306,232 296,238 C288,232 284,222 278,206 C258,152 238,104 226,72 Z"
      />
      <path
        className="guide-gland"
        d="M304,190 C318,196 326,216 322,238 C318,256 306,260 300,250 C304,238 308,216 304,190 Z"
      />
      <path className="guide-node" d={leftNode} />
    </>
  )
}

function Labels() {
  return (
    <g className="guide-label">
      <text x="220" y="30" textAnchor="middle" className="guide-small">
        {words.nose}
      </text>
      <text x="92" y="92" textAnchor="end">
        {words.jaw}
      </text>
      <path d="M98,90 L186,108" />
      <text x="220" y="224" textAnchor="middle" className="guide-small">
        {words.larynx}
      </text>
      <text x="420" y="158" textAnchor="middle" className="guide-strong">
        {words.left}
      </text>
      <path d="M376,166 L288,226" />
      <text x="20" y="158" textAnchor="middle" className="guide-strong">
        {words.right}
      </text>
      <path d="M64,166 L152,226" />
      <text x="360" y="262" className="guide-small">
        <tspan x="360">{words.gland.split(': ')[0]}:</tspan>
        <tspan x="360" dy="17">
          {words.gland.split(': ')[1]}
        </tspan>
      </text>
      <path d="M354,256 L322,236" />
      <text x="220" y="392" textAnchor="middle">
        {words.cut}
      </text>
      <path d="M160,376 L164,288" />
    </g>
  )
}
