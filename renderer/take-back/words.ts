/** What the strip says of taking back. */
export const takeBackWords = {
  offer: 'Take back: {say}',
  left: '{seconds} s',
  idle: 'Take back',
  done: 'Taken back: {say}.',
} as const
