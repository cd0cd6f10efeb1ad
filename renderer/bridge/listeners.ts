/** Those who want to hear one kind of news. */
export interface Listeners<T> {
  readonly add: (listener: (news: T) => void) => () => void
  readonly tell: (news: T) => void
}

export function createListeners<T>(): Listeners<T> {
  const all = new Set<(news: T) => void>()
  return {
    add(listener) {
      all.add(listener)
      return () => all.delete(listener)
    },
    tell: (news) => {
      for (const listener of all) listener(news)
    },
  }
}
