import { guideWords } from './words.ts'

const words = guideWords.side

/** The head cut through from its side, throat up, nose to the left: how deep the node lies. */
export function HeadSide() {
  return (
    <svg className="guide-drawing" viewBox="0 0 440 300" role="img" aria-label={words.alt}>
      <path
        className="guide-hide"
        d="M14,164 C10,140 22,124 48,116 C100,98 168,84 220,78 C270,74 330,66 430,62 L430,214 C372,218 330,226 300,238 C262,252 214,250 170,232 C118,212 56,200 28,188 C18,184 15,176 14,164 Z"
      />
      <path
        className="guide-bone"
        d="M34,142 C86,120 160,104 214,96 C226,94 236,104 234,118 C232,132 224,142 214,142 C206,130 192,124 172,128 C120,138 70,150 36,156 Z"
      />
      <path
        className="guide-bone"
        d="M40,176 C92,180 150,186 196,184 C224,182 246,182 262,190 C276,198 282,214 270,226 C248,240 206,238 172,222 C128,204 76,196 42,188 Z"
      />
      <path
        className="guide-bone"
        d="M288,176 C304,168 322,172 328,186 C332,202 322,214 306,214 C292,214 282,204 282,192 C282,184 284,178 288,176 Z"
      />
      <path
        className="guide-bone"
        d="M340,172 C358,166 378,168 382,182 C386,196 376,208 360,208 C346,208 336,202 334,190 C332,180 334,174 340,172 Z"
      />
      <path
        className="guide-bone"
        d="M392,168 L430,164 L430,200 L394,204 C388,194 388,178 392,168 Z"
      />
      <path
        className="guide-larynx"
        d="M240,100 C258,92 280,94 288,106 C294,118 288,132 274,136 C258,138 242,134 238,122 C236,114 236,104 240,100 Z"
      />
      <path className="guide-larynx" d="M288,100 L430,86 L430,118 L290,128 Z" />
      {[308, 328, 348, 368, 388, 408].map((x) => (
        <path key={x} className="guide-ring" d={`M${x},${98 - (x - 308) / 10} l2,28`} />
      ))}
      <path
        className="guide-node"
        d="M250,150 C266,144 284,148 288,158 C290,170 276,176 262,176 C250,176 244,170 250,166 C256,162 244,158 250,150 Z"
      />
      <path className="guide-cut" d="M302,66 L296,168" />
      <Labels />
    </svg>
  )
}

function Labels() {
  return (
    <g className="guide-label">
      <text x="96" y="86">
        {words.jaw}
      </text>
      <path d="M112,92 L122,128" />
      <text x="206" y="52">
        {words.larynx}
      </text>
      <path d="M232,58 L258,100" />
      <text x="356" y="40">
        {words.windpipe}
      </text>
      <path d="M384,46 L380,96" />
      <text x="296" y="56" textAnchor="middle">
        {words.knife}
      </text>
      <text x="196" y="170" textAnchor="end" className="guide-strong">
        {words.node}
      </text>
      <path d="M202,164 L248,162" />
      <text x="430" y="262" textAnchor="end">
        {words.spine}
      </text>
      <path d="M330,250 L308,212" />
      <text x="150" y="276" textAnchor="middle">
        {words.skull}
      </text>
      <path d="M170,262 L214,214" />
    </g>
  )
}
