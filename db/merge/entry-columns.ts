/** The columns of an entry, in the order of the table. */
export const entryColumns = [
  'desk',
  'seq',
  'ms',
  'n',
  'wall',
  'by',
  'kind',
  'v',
  'body',
  'prev',
  'hash',
] as const

/** The same as SQL names them. */
export const entryColumnNames = entryColumns.map((name) => `"${name}"`).join(', ')
