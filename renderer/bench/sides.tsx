/** Whose left and right: with the throat up and the nose away, the animal's left is on your right. */
export function Sides() {
  return (
    <figure className="sides">
      <svg viewBox="0 0 120 118" aria-hidden="true" focusable="false">
        <path
          className="sides-head"
          d="M60,6 C70,6 76,14 77,26 C79,42 88,54 88,72 C88,90 78,104 60,104 C42,104 32,90 32,72 C32,54 41,42 43,26 C44,14 50,6 60,6 Z"
        />
        <path className="sides-line" d="M60,14 L60,98" />
        <path className="sides-head" d="M34,62 C22,56 14,58 8,66 C16,76 26,78 33,74 Z" />
        <path className="sides-head" d="M86,62 C98,56 106,58 112,66 C104,76 94,78 87,74 Z" />
        <text className="sides-letter" x="46" y="88">
          R
        </text>
        <text className="sides-letter" x="74" y="88">
          L
        </text>
      </svg>
      <figcaption>
        Left and right are the animal’s own. Throat up, nose away from you: its left is on your
        right.
      </figcaption>
    </figure>
  )
}
