// Holds what the folders promise by reading import lines: levels point downwards only, each outside library has one owner, files stay short.
import { readdirSync, readFileSync } from 'node:fs'
import { join, posix, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

const levels: Record<string, number> = {
  math: 0,
  text: 0,
  colour: 1,
  frame: 1,
  sensor: 2,
  operations: 2,
  analysis: 2,
  luts: 2,
  pipeline: 3,
  edits: 3,
  decode: 4,
  gpu: 4,
  roll: 4,
  export: 4,
  workbench: 5,
  ui: 6,
  commands: 7,
  'main.tsx': 7,
}

/** Which part of the tree may import a package of the outside world; tests are free. */
const owners: Record<string, (path: string) => boolean> = {
  three: (path) => path.startsWith('src/gpu/'),
  'libraw-wasm': (path) => path.startsWith('src/decode/'),
  'colorjs.io': () => false,
  geotiff: (path) => path.startsWith('src/decode/'),
  '@jsquash/jpeg': (path) => /^src\/(?:decode|export|commands)\//.test(path),
  comlink: (path) => /^src\/(?:decode|export|workbench)\//.test(path),
  react: (path) => path.startsWith('src/ui/') || path === 'src/main.tsx',
  '@rgrove/parse-xml': (path) => path.startsWith('src/luts/'),
  valibot: (path) => path.startsWith('src/roll/'),
  idb: (path) => path.startsWith('src/roll/'),
}

interface SourceFile {
  /** From the repository root, with forward slashes. */
  readonly path: string
  readonly lines: number
  readonly imports: readonly string[]
}

const importLine = /(?:from\s+|import\s+|import\(|new URL\()\s*['"]([^'"]+)['"]/g

function filesBelow(folder: string): SourceFile[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx|glsl)$/.test(entry.name))
    .map((entry) => {
      const full = join(entry.parentPath, entry.name)
      const text = readFileSync(full, 'utf8')
      const path = relative(root, full).split(sep).join('/')
      return {
        path,
        lines: text.split('\n').length - 1,
        imports: [...text.matchAll(importLine)].map((match) => match[1]),
      }
    })
}

const source = filesBelow('src')
const everything = [...source, ...filesBelow('shaders'), ...filesBelow('tests')]

/** The folder (or the root file) of `src` that a path lies in; undefined outside `src`. */
const partOf = (path: string) => /^src\/([^/]+)/.exec(path)?.[1]

const localImports = source.flatMap(({ path, imports }) =>
  imports
    .filter((target) => target.startsWith('.'))
    .map((target) => ({ path, target: posix.join(posix.dirname(path), target.split('?')[0]) })),
)
const packageImports = source.flatMap(({ path, imports }) =>
  imports.filter((target) => !/^(\.|node:)/.test(target)).map((target) => ({ path, target })),
)

describe('levels', () => {
  test('every file of src lies in a folder that has a level', () => {
    const strangers = source.map(({ path }) => path).filter((path) => levels[partOf(path)!] === undefined)
    expect(strangers).toEqual([])
  })

  test('imports were read at all', () => {
    expect(localImports.length).toBeGreaterThan(20)
    expect(packageImports.map(({ target }) => target)).toContain('zustand/vanilla')
  })

  test('imports point to the own folder or strictly downwards', () => {
    const wrong = localImports.filter(({ path, target }) => {
      const [from, to] = [partOf(path)!, partOf(target)]
      return to !== undefined && from !== to && levels[from] <= levels[to]
    })
    expect(wrong).toEqual([])
  })

  test('the interface reaches files, database and graphics through the workbench only', () => {
    const hidden = ['sensor', 'decode', 'gpu', 'roll']
    const wrong = localImports.filter(({ path, target }) => partOf(path) === 'ui' && hidden.includes(partOf(target)!))
    expect(wrong).toEqual([])
  })

  test('outside src only shaders and the package’s own record are imported, the demo roll by its one door, commands are free', () => {
    const wrong = localImports.filter(({ path, target }) => {
      if (/^(src|shaders)\/|^package\.json$/.test(target) || partOf(path) === 'commands') return false
      return !(target.startsWith('demo-data/') && path === 'src/workbench/demo-roll.ts')
    })
    expect(wrong).toEqual([])
  })

  test('levels 0 to 3 touch no page, worker, database or graphics', () => {
    const pure = source.filter(({ path }) => levels[partOf(path)!] <= 3)
    const impure =
      /\b(?:window|document|navigator|indexedDB|self|postMessage|WebGL2RenderingContext|OffscreenCanvas)\s*[.(]/
    const wrong = pure.filter(({ path }) => impure.test(readFileSync(join(root, path), 'utf8')))
    expect(wrong.map(({ path }) => path)).toEqual([])
  })
})

describe('owners of outside libraries', () => {
  test.each(Object.entries(owners))('%s is imported by its owner only', (library, mayImport) => {
    const wrong = packageImports.filter(
      ({ path, target }) => (target === library || target.startsWith(`${library}/`)) && !mayImport(path),
    )
    expect(wrong).toEqual([])
  })
})

describe('short files', () => {
  const byLength = (files: readonly SourceFile[]) => files.map(({ lines }) => lines).sort((a, b) => a - b)

  test('none is longer than 300 lines', () => {
    expect(everything.filter(({ lines }) => lines > 300).map(({ path, lines }) => `${path}: ${lines}`)).toEqual([])
  })

  test('median at most 70 lines and 90th percentile at most 200', () => {
    const lengths = byLength(source)
    expect(lengths[Math.floor(lengths.length * 0.5)]).toBeLessThanOrEqual(70)
    expect(lengths[Math.floor(lengths.length * 0.9)]).toBeLessThanOrEqual(200)
  })
})
