// Shared shader text by name: an operation's text asks for it with a line `#include <name>`.
// Each chunk enters a program once, before the first text that asks for it.
import angle from '../../shaders/angle.glsl?raw'
import acescct from '../../shaders/acescct.glsl?raw'
import cubeRoot from '../../shaders/cube-root.glsl?raw'
import showReach from '../../shaders/show-reach.glsl?raw'
import table from '../../shaders/table.glsl?raw'
import transferCurve from '../../shaders/transfer-curve.glsl?raw'

const chunks: Readonly<Record<string, string>> = {
  'cube-root': cubeRoot,
  angle,
  acescct,
  'transfer-curve': transferCurve,
  table,
  'show-reach': showReach,
}

const includeLine = /^[ \t]*#include <([\w-]+)>[ \t]*$/gm

/**
 * `text` with every include line replaced by its chunk, chunks within chunks too; a name already in `seen` becomes
 * nothing, and new names are added to it. Throws a RangeError for an unknown name.
 */
export function resolveIncludes(text: string, seen: Set<string>): string {
  return text.replace(includeLine, (_line, name: string) => {
    if (seen.has(name)) return ''
    const chunk = chunks[name]
    if (chunk === undefined) {
      throw new RangeError(`No shader chunk is called “${name}”; known are ${Object.keys(chunks).join(', ')}.`)
    }
    seen.add(name)
    return resolveIncludes(chunk, seen)
  })
}
