/** How far a long task over a log is, told after every entry: cheap to ignore, easy to thin out. */
export type Progress = (done: number, total: number) => void

export const quietly: Progress = () => undefined
