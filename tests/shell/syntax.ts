/** The shell's sources as a syntax tree: a comment or a string is never taken for the real thing. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseSync, Visitor } from 'vite'
import { root } from '../../build/steps.ts'

/** Something said in a source. */
export interface Said {
  readonly file: string
  /** What is named: a property's key, or what is called, e.g. `app.enableSandbox`. */
  readonly name: string
  /** The source text of the property's value, or of the call's arguments. */
  readonly text: string
}

/** What a check looks at. */
export interface Syntax {
  readonly properties: readonly Said[]
  readonly calls: readonly Said[]
  /** Text of every string and template, in `text`. */
  readonly strings: readonly Said[]
  /** Names taken from 'electron', in `name`. */
  readonly electron: readonly Said[]
}

/** Sources by their path under the root. */
export type Sources = ReadonlyMap<string, string>

export function sourcesIn(...folders: readonly string[]): Sources {
  const files = folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => `${folder}/${name}`),
  )
  return new Map(files.map((file) => [file, readFileSync(join(root, file), 'utf8')]))
}

interface Node {
  readonly start: number
  readonly end: number
}

/** Reads every source with a real parser. */
export function syntaxOf(sources: Sources): Syntax {
  const syntax = { properties: [], calls: [], strings: [], electron: [] } as {
    [K in keyof Syntax]: Said[]
  }
  for (const [file, source] of sources) read(file, source, syntax)
  return syntax
}

function read(file: string, source: string, into: { [K in keyof Syntax]: Said[] }): void {
  const { program, errors } = parseSync(file, source, {
    lang: file.endsWith('.tsx') ? 'tsx' : 'ts',
  })
  if (errors[0]) throw new Error(`${file}: ${errors[0].message}`)
  const textOf = ({ start, end }: Node) => source.slice(start, end)
  new Visitor({
    Property: (node) =>
      into.properties.push({ file, name: textOf(node.key), text: textOf(node.value) }),
    CallExpression: (node) =>
      into.calls.push({
        file,
        name: textOf(node.callee),
        text: node.arguments.map(textOf).join(', '),
      }),
    Literal: (node) => {
      if (typeof node.value === 'string') into.strings.push({ file, name: '', text: node.value })
    },
    TemplateElement: (node) => into.strings.push({ file, name: '', text: node.value.raw }),
    ImportDeclaration: (node) => {
      if (node.source.value !== 'electron' || node.importKind === 'type') return
      for (const each of node.specifiers)
        if (each.type !== 'ImportSpecifier' || each.importKind !== 'type')
          into.electron.push({ file, name: each.local.name, text: '' })
    },
  }).visit(program)
}
