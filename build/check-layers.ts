import { readdirSync, readFileSync } from 'node:fs'
import { isBuiltin } from 'node:module'
import { join, posix, relative, sep } from 'node:path'
import { type Reach, reachesOf } from './imports.ts'
import { keptBy, type Layer, layers, pureFolders } from './layers.ts'

/** One broken arrow: where, and the sentence that says why it is one. */
export interface Breach {
  readonly file: string
  readonly line: number
  readonly say: string
}

const isInside = (path: string, folder: string) => path.startsWith(`${folder}/`)

function sourcesUnder(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => posix.join(folder, name.split(sep).join('/')))
    .sort()
}

function packageOf(specifier: string): string {
  return specifier
    .split('/')
    .slice(0, specifier.startsWith('@') ? 2 : 1)
    .join('/')
}

function isAllowed(layer: Layer, name: string): boolean {
  const scope = name.split('/')[0] ?? name
  return layer.packages === null || layer.packages.includes(name) || layer.packages.includes(scope)
}

function wrongLibrary(layer: Layer, specifier: string): string | null {
  if (isBuiltin(specifier)) return layer.node ? null : `may not use Node (${specifier})`
  const name = packageOf(specifier)
  const keeper = keptBy[name]
  if (keeper && keeper !== layer.folder) return `may not import ${name}, which ${keeper} keeps`
  return isAllowed(layer, name) ? null : `may not import ${name}`
}

function wrongFolder(layer: Layer, target: string): string | null {
  if (isInside(target, layer.folder)) return null
  if (layer.folders.some((folder) => isInside(target, folder))) return null
  return `may not import ${target}`
}

function breachOfImport(layer: Layer, file: string, { name, line }: Reach): Breach | null {
  const wrong = name.startsWith('.')
    ? wrongFolder(layer, posix.join(posix.dirname(file), name))
    : wrongLibrary(layer, name)
  return wrong ? { file, line, say: `${layer.folder} ${wrong}: ${layer.why}` } : null
}

function breachOfPurity(layer: Layer, file: string, { name, line }: Reach): Breach {
  const say = `${layer.folder} may not use ${name}: time and chance come in as arguments`
  return { file, line, say }
}

function breachesIn(root: string, layer: Layer, file: string): Breach[] {
  const { imports, impurities } = reachesOf(file, readFileSync(join(root, file), 'utf8'))
  const impure = pureFolders.includes(layer.folder) ? impurities : []
  return [
    ...imports.flatMap((reach) => breachOfImport(layer, file, reach) ?? []),
    ...impure.map((reach) => breachOfPurity(layer, file, reach)),
  ]
}

/** Source files under `electron/` that lie in no known layer: they would escape every rule. */
function strays(root: string): Breach[] {
  return sourcesUnder(root, 'electron')
    .filter((file) => !layers.some((layer) => isInside(file, layer.folder)))
    .map((file) => ({ file, line: 1, say: 'lies in no layer: move it into one of the folders' }))
}

/** Every import under `root` that goes against the arrows in layers.ts. */
export function breachesUnder(root: string): Breach[] {
  const inLayers = layers.flatMap((layer) =>
    sourcesUnder(root, layer.folder).flatMap((file) => breachesIn(root, layer, file)),
  )
  return [...inLayers, ...strays(root)]
}

if (import.meta.main) {
  const root = relative('', join(import.meta.dirname, '..')) || '.'
  const breaches = breachesUnder(root)
  for (const { file, line, say } of breaches) console.error(`${file}:${line} ${say}`)
  process.exitCode = breaches.length > 0 ? 1 : 0
}
