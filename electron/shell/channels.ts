/** The two lines between a window and the desk. */

/** The window asks: `(name, input)`, answered with a `Result`. */
export const callChannel = 'desk-call'
/** The desk tells: the topics that have changed. */
export const changesChannel = 'desk-changes'
