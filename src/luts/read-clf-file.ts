// Reads a CLF file (Common LUT Format: Academy S-2014-006 / SMPTE ST 2136-1) as a colour transform, versions 1.2 to 3.
// Everything in it is either understood or refused by name: a table that is half understood would give wrong colours.
import type { ColourTransform, TransformNode } from './colour-transform.ts'
import { type ClfElement, holdsOnlyElements, parseClf } from './clf-text.ts'
import { LutFileError, type Refuse } from './lut-file-error.ts'
import { depthsOf, readClfNode } from './read-clf-node.ts'

const versions = ['1.2', '2', '2.0', '3', '3.0']
const words = ['Description', 'InputDescriptor', 'OutputDescriptor']

function checkRoot(root: ClfElement): void {
  if (root.name !== 'ProcessList') root.refuse(`its outermost element is ${root.name.slice(0, 40)}, not ProcessList`)
  root.allowAttributes(['id', 'name', 'compCLFversion', 'inverseOf'])
  holdsOnlyElements(root)
  const version = root.attribute('compCLFversion')?.trim()
  if (version === undefined) root.refuse('ProcessList needs the attribute “compCLFversion”')
  if (!versions.includes(version!)) root.refuse(`version ${version!.slice(0, 20)} of the format is not known here`)
}

/**
 * The transform in the text of a CLF file. What it says it takes and gives stands among the remarks.
 * @throws LutFileError with `fileName`, the line and the reason
 */
export function readClfFile(text: string, fileName: string): ColourTransform {
  const refuse: Refuse = (line, reason) => {
    throw new LutFileError(fileName, line, reason)
  }
  const root = parseClf(text, refuse)
  checkRoot(root)
  const remarks: string[] = []
  const nodes: TransformNode[] = []
  let depth: string | null = null
  for (const element of root.children) {
    if (element.name === 'Info') continue
    if (words.includes(element.name)) {
      const label = { InputDescriptor: 'Takes: ', OutputDescriptor: 'Gives: ' }[element.name] ?? ''
      remarks.push(label + element.text.trim().replace(/\s+/g, ' '))
      continue
    }
    const node = readClfNode(element, depthsOf(element))
    const { input, output } = depthsOf(element)
    if (depth !== null && input !== depth)
      element.refuse(`${element.name} takes ${input}, but what comes before it gives ${depth}`)
    depth = output
    nodes.push(node)
  }
  if (nodes.length === 0) root.refuse('ProcessList holds no process node')
  return { title: root.attribute('name') ?? '', remarks, nodes }
}
