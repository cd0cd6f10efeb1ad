/** The words of the find box and of a story found with it. */
export const findWords = {
  label: 'Find anything: an animal, tag, hunter, bag, kit, cooler or name',
  placeholder: 'Find',
  found: 'Found',
  count: '{count} found',
  nothing: { say: 'Nothing here begins with {text}.', next: 'Type less of it, or scan the label.' },
  story: 'Story',
  go: 'Go to {screen}',
  close: 'Close',
  timeline: 'What was done',
  empty: 'The log has no entry about it yet.',
} as const
