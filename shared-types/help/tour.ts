/** The first round, in five steps. `at` names the part of the window that a step is about. */
export const tourSteps = [
  {
    at: 'screens',
    title: 'Every screen has a key',
    say: 'F2 is the line, F3 check-in, F4 the bench. The screen you are on is underlined. Esc leads back to the line.',
  },
  {
    at: 'find',
    title: 'Scan anything, anywhere',
    say: 'A scanned label always says what it is. Ctrl+K finds an animal, tag, hunter, bag, kit or cooler by typing.',
  },
  {
    at: 'screen',
    title: 'The screen shows what is next',
    say: 'Each button wears its key. A letter works while the focus is in its part of the screen. Shapes say the same as colours.',
  },
  {
    at: 'strip',
    title: 'The strip answers',
    say: 'It says what was done, or what was not and what to do next. Within a minute Ctrl+U takes your own last action back.',
  },
  {
    at: 'person',
    title: 'Your name is on what you do',
    say: 'Ctrl+L changes the person. F1 is help: the keys of this screen, why the desk refused, and a guide to print. Knives, bleach and cold have cautions: local rules come first.',
  },
] as const

export type TourPlace = (typeof tourSteps)[number]['at']

export const tourWords = {
  title: 'First time here',
  place: 'Step {step} of {steps}',
  next: 'Next',
  back: 'Back',
  last: 'Done',
  skip: 'Skip the tour',
} as const
