// XML of a CLF file with the line of everything, and attributes and numbers read strictly: what is not understood is refused.
import { parseXml, XmlElement, XmlError, XmlText, XmlCdata } from '@rgrove/parse-xml'

import type { Refuse } from './lut-file-error.ts'

/** An element of the file with ways to read it that refuse by line. */
export interface ClfElement {
  readonly name: string
  readonly line: number
  readonly children: readonly ClfElement[]
  /** Text directly inside. */
  readonly text: string
  /** An attribute's text as it stands, or undefined. */
  attribute(name: string): string | undefined
  /** Refuses attributes that are not among these. */
  allowAttributes(names: readonly string[]): void
  refuse(reason: string): never
}

/** Counts the line of ascending and descending offsets without reading the text anew each time. */
function lineCounter(text: string): (offset: number) => number {
  const starts = [0]
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1)
  return (offset) => {
    let [low, high] = [0, starts.length]
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (starts[middle] <= offset) low = middle
      else high = middle
    }
    return low + 1
  }
}

function elementOf(element: XmlElement, lineAt: (offset: number) => number, refuse: Refuse): ClfElement {
  const line = lineAt(element.start)
  const fail = (reason: string) => refuse(line, reason)
  const { attributes } = element
  return {
    name: element.name,
    line,
    children: element.children
      .filter((child): child is XmlElement => child instanceof XmlElement)
      .map((child) => elementOf(child, lineAt, refuse)),
    text: element.children
      .filter((child): child is XmlText => child instanceof XmlText || child instanceof XmlCdata)
      .map((child) => child.text)
      .join(''),
    attribute: (name) => (Object.hasOwn(attributes, name) ? attributes[name] : undefined),
    allowAttributes(names) {
      for (const name of Object.keys(attributes))
        if (!names.includes(name) && !/^(?:xml|xsi)(?::|$)|^xmlns(?::|$)/.test(name))
          fail(`the attribute “${name.slice(0, 40)}” of ${element.name} is not known`)
    },
    refuse: fail,
  }
}

/** Encodings in which every character of numbers and names is the byte that it is in UTF-8; other ones were not read right. */
const knownEncodings = ['utf-8', 'us-ascii', 'iso-8859-1', 'windows-1252']

/** XML 1.0, 4.3.3: a declared encoding that is not known is a fatal error. */
function checkEncoding(text: string, refuse: Refuse): void {
  const declared = /^<\?xml\s[^>]*?\sencoding\s*=\s*["']([^"']*)["']/.exec(text)?.[1]
  if (declared !== undefined && !knownEncodings.includes(declared.toLowerCase()))
    refuse(1, `its encoding “${declared.slice(0, 40)}” is not known here; known are ${knownEncodings.join(', ')}`)
}

/** Refuses text between the elements inside, which the schema of the format has no place for; a mistyped tag hides there. */
export function holdsOnlyElements(element: ClfElement): void {
  const stray = element.text.trim()
  if (stray !== '') element.refuse(`“${stray.slice(0, 40)}” in ${element.name} belongs to no element`)
}

/** The outermost element of the text. Refuses what is no well-formed XML, with the line. */
export function parseClf(text: string, refuse: Refuse): ClfElement {
  // The parser counts offsets after doing the same to line ends and the byte order mark.
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n')
  checkEncoding(plain, refuse)
  try {
    const { root } = parseXml(plain, { includeOffsets: true })
    return root ? elementOf(root, lineCounter(plain), refuse) : refuse(null, 'it holds no element')
  } catch (reason) {
    if (reason instanceof RangeError) return refuse(null, 'its elements are nested too deeply')
    if (!(reason instanceof XmlError)) throw reason
    return refuse(reason.line, `it is no well-formed XML (${reason.message.split('\n')[0].replace(/ \(line.*$/s, '')})`)
  }
}

const numberText = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/
const oddNumbers: Readonly<Record<string, number>> = { inf: Infinity, infinity: Infinity, nan: NaN }

/** One number of the text of an element or attribute. `odd` allows infinities and NaN. */
export function clfNumber(element: ClfElement, word: string, odd = false): number {
  if (numberText.test(word)) {
    const value = Number(word)
    if (Number.isFinite(value)) return value
  } else if (odd) {
    const value = oddNumbers[word.replace(/^[+-]/, '').toLowerCase()]
    if (value !== undefined) return word.startsWith('-') ? -value : value
  }
  return element.refuse(`“${word.slice(0, 40)}” is not a ${odd ? '' : 'finite '}number`)
}

/** `count` numbers between blanks in an element's text. */
export function clfNumbers(element: ClfElement, count: number, odd = false): number[] {
  const [inside] = element.children
  if (inside) inside.refuse(`${inside.name.slice(0, 40)} is not known inside ${element.name}`)
  const words = element.text.split(/\s+/).filter((word) => word !== '')
  if (words.length !== count) return element.refuse(`${element.name} must hold ${count} numbers, not ${words.length}`)
  return words.map((word) => clfNumber(element, word, odd))
}

/** A numeric attribute, or `otherwise` where it is absent. */
export function numberAttribute(element: ClfElement, name: string, otherwise?: number): number {
  const text = element.attribute(name)?.trim()
  if (text !== undefined) return clfNumber(element, text)
  return otherwise ?? element.refuse(`${element.name} needs the attribute “${name}”`)
}

/** An attribute that must be one of these, letter by letter: blanks count in the schema of the format. */
export function choiceAttribute<T extends string>(
  element: ClfElement,
  name: string,
  known: readonly T[],
  otherwise?: T,
): T {
  const text = element.attribute(name) ?? otherwise
  if (text === undefined) return element.refuse(`${element.name} needs the attribute “${name}”`)
  return (
    known.find((one) => one === text) ??
    element.refuse(`${element.name} has the ${name} “${text.slice(0, 40)}”; known are ${known.join(', ')}`)
  )
}

/** The only child of a name, or undefined; refuses two. */
export function onlyChild(element: ClfElement, name: string): ClfElement | undefined {
  const [first, second] = element.children.filter((child) => child.name === name)
  return second ? second.refuse(`${element.name} holds two ${name}`) : first
}

/** The child of a name that must be there once. */
export function neededChild(element: ClfElement, name: string): ClfElement {
  return onlyChild(element, name) ?? element.refuse(`${element.name} needs ${name}`)
}
