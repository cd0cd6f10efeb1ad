import { buildStale, screens, shell } from './bundles.ts'
import { root } from './steps.ts'

await buildStale(root, [screens, ...shell])
