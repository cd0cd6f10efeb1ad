import { type ParserOptions, parseSync, Visitor } from 'vite'

/** Something a source file reaches for, and the line where it does. */
export interface Reach {
  readonly name: string
  readonly line: number
}

/** What the layer check needs to know of one source file. */
export interface Reaches {
  /** Specifiers of every import, re-export, `import()`, `import('x').T` and `require`. */
  readonly imports: readonly Reach[]
  /** Uses of the clock or of chance: `Date.now`, `new Date()`, `Math.random`, `performance.now`. */
  readonly impurities: readonly Reach[]
}

type Found = { text: string; start: number }

interface Literal {
  readonly type: string
  readonly start: number
  readonly value?: unknown
}

const clocks = new Set(['Date.now', 'Math.random', 'performance.now', 'crypto.randomUUID'])

/** Reads one file with a real parser, so that a comment or a string is never taken for an import. */
export function reachesOf(file: string, source: string): Reaches {
  const lang: ParserOptions['lang'] = file.endsWith('.tsx') ? 'tsx' : 'ts'
  const { program, errors } = parseSync(file, source, { lang })
  if (errors[0]) throw new Error(`${file}: ${errors[0].message}`)
  const imports: Found[] = []
  const impurities: Found[] = []
  const addImport = (literal: Literal | null | undefined) => {
    if (literal && typeof literal.value === 'string')
      imports.push({ text: literal.value, start: literal.start })
  }
  new Visitor({
    ImportDeclaration: (node) => addImport(node.source),
    ExportNamedDeclaration: (node) => addImport(node.source),
    ExportAllDeclaration: (node) => addImport(node.source),
    ImportExpression: (node) => addImport(node.source),
    TSImportType: (node) => addImport(node.source),
    CallExpression: (node) => {
      if (node.callee.type === 'Identifier' && node.callee.name === 'require')
        addImport(node.arguments[0])
    },
    NewExpression: (node) => {
      if (
        node.callee.type === 'Identifier' &&
        node.callee.name === 'Date' &&
        node.arguments.length === 0
      )
        impurities.push({ text: 'new Date()', start: node.start })
    },
    MemberExpression: (node) => {
      if (node.object.type !== 'Identifier' || node.property.type !== 'Identifier') return
      const text = `${node.object.name}.${node.property.name}`
      if (clocks.has(text)) impurities.push({ text, start: node.start })
    },
  }).visit(program)
  const toReach = ({ text, start }: Found): Reach => ({
    name: text,
    line: source.slice(0, start).split('\n').length,
  })
  return { imports: imports.map(toReach), impurities: impurities.map(toReach) }
}
