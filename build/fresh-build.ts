import { runNode } from './steps.ts'

/** Before any test: the bundles that screens are tested on are those of the sources here. */
export function setup(): void {
  if (runNode('build/build.ts') !== 0) throw new Error('The screens do not build.')
}
