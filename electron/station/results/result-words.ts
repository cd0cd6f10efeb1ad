/**
 * What a hunter is told, in words that defer to the agency's veterinarian and to public health advice.
 * After cdc.gov/prions/cwd/prevention.html: do not eat meat from an animal that tests positive, wait for
 * the result, and "not detected" does not guarantee that an animal was free of infection.
 */
import type { ResultWord } from '../../../shared-types/laboratory-result.ts'

/** The usual cautions of a detection, for screens and letters. */
export const detectionCautions: readonly string[] = [
  'Do not eat meat from an animal that tests positive, and do not give it away.',
  "What is to be done with the meat, head, spine and bones is for the agency's veterinarian and the health authorities to say. Ask them before anything is thrown away or moved.",
  'Wear gloves when handling it, keep it wrapped and apart from other food, and keep dogs and other animals away from it.',
]

export interface TellingWords {
  /** The result in one sentence. */
  readonly say: string
  /** What to do, most urgent first. */
  readonly next: readonly string[]
}

/** `askWhom`: whom a hunter asks, as the agency publishes it; may be empty. */
export function tellingWords(word: ResultWord | null, askWhom: string): TellingWords {
  const ask = askWhom === '' ? 'Ask the agency if you have questions.' : `Questions: ${askWhom}.`
  switch (word) {
    case 'detected':
      return {
        say: 'The result is: detected. The laboratory found the disease in a sample of this animal.',
        next: [...detectionCautions, ask],
      }
    case 'presumptive':
      return {
        say: 'The result is: presumptive. A first test reacted; a second one decides.',
        next: ['Wait for the second test. Do not eat the meat until then.', ask],
      }
    case 'not-detected':
      return {
        say: 'The result is: not detected. The laboratory did not find the disease in a suitable sample.',
        next: [
          'This is no promise that the animal was free of it: an early infection can be missed.',
          'Follow the advice of your wildlife agency and health authorities.',
          ask,
        ],
      }
    case 'unsuitable':
      return {
        say: 'The result is: unsuitable. The tissue could not be tested, so nothing is known of this animal.',
        next: [
          'There is no result to wait for from these samples. Ask the agency whether the animal can still be tested.',
          'Until an animal is tested, health authorities advise to think twice about eating its meat.',
          ask,
        ],
      }
    case 'pending':
    case null:
      return {
        say: 'There is no result yet.',
        next: ['Wait for the result before eating the meat. It can take weeks.', ask],
      }
  }
}
