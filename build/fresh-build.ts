import { buildStale, everyBundle } from './bundles.ts'
import { root } from './steps.ts'

/** Before any test: the bundles that screens are tested on are those of the sources here. */
export async function setup(): Promise<void> {
  await buildStale(root, everyBundle(root))
}
