import { buildStale, everyBundle } from './bundles.ts'
import { root } from './steps.ts'

await buildStale(root, everyBundle)
