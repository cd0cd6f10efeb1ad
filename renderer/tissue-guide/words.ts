/**
 * The words of the tissue guide. Where the nodes lie and how they feel: common practice, no source,
 * except where a source is named. Local rules and the training of whoever cuts come first.
 */
export const guideWords = {
  open: 'Tissue guide',
  title: 'Where the nodes lie, and what they look like',
  below: {
    title: 'From below: throat up, nose away from you',
    alt: 'Drawing of a head seen from below, the nose at the top. The lower jaw is a V. In the middle behind it lies the larynx, with the windpipe running down. One node lies on each side of the larynx, deep between it and the angle of the jaw: the animal’s left node is at the right of the drawing, its right node at the left. The salivary glands lie further out, over the angle of the jaw.',
    nose: 'nose',
    jaw: 'lower jaw',
    larynx: 'larynx',
    windpipe: 'windpipe',
    cut: 'cut here, jaw to jaw, down to the spine',
    left: 'LEFT node',
    right: 'RIGHT node',
    gland: 'salivary gland: not this',
    hands: 'As you stand, the animal’s left is on your right.',
  },
  side: {
    title: 'From its side: how deep',
    alt: 'Drawing of a head cut through from the side, throat up. The node lies behind the larynx, against the muscles under the base of the skull, in front of the first neck vertebra.',
    jaw: 'jaw',
    larynx: 'larynx',
    windpipe: 'windpipe',
    node: 'node',
    spine: 'first neck vertebra',
    skull: 'base of the skull',
    knife: 'knife',
  },
  steps: [
    'Head on its back, throat up, nose away from you.',
    'Cut across behind the larynx, from jaw angle to jaw angle, down to the spine.',
    'Feel beside and behind the larynx on each side: a firm bean under the fat.',
    'Free it with the tip of the knife. Cut it once across, and look at the cut face.',
  ],
  faces: {
    title: 'The cut face',
    scale: 'A node is 21 to 24 mm across (common practice); pea to grape size by North Dakota GF.',
    good: 'this one',
    bad: 'not this',
  },
  signs: {
    'lymph-node':
      'Firm, smooth, a bean. Paler follicles in a row under the rim. Tan, grey to purple.',
    'salivary-gland': 'Breaks into small lobes, like chewed gum. Cannot be tested.',
    muscle: 'Red, the same all over, with fibres.',
    fat: 'Pale, soft, greasy; it floats apart.',
  },
  sources:
    'Drawings ours. Positions and signs: common practice, no source. Salivary gland like chewed gum, node grey to purple: North Dakota Game and Fish, gf.nd.gov, sampling kit page. Salivary glands are not testable: Idaho Fish and Game, idfg.idaho.gov, CWD sampling.',
} as const
