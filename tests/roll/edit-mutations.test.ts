// Edit files changed by chance, 3,000 times with fixed seeds: each is refused with place and reason, or is a whole edit that
// describes, makes finite light and is read back the same. Nothing in between.
import { expect, it } from 'vitest'
import { addMark } from '../../src/edits/marks.ts'
import { addStep, type Chain, isFree } from '../../src/edits/stack.ts'
import { operations } from '../../src/operations/index.ts'
import { makePart, maskKinds } from '../../src/operations/masks/mask.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { tableSupplies } from '../../src/roll/edit-content.ts'
import { EditFileError, readEditFile, writeEditFile } from '../../src/roll/edit-file.ts'
import { tableHash } from '../../src/roll/table-text.ts'
import { randomNumbers } from '../support/synthetic-sensor.ts'

const trials = 3000
const facts = {
  meanCameraRgb: [0.4, 0.12, 0.03],
  referenceNeutral: [1.7, -2],
  noise: { fullScaleElectrons: 20_000, readNoiseElectrons: 4 },
  cameraToXyz: null,
  filterNm: 590,
  aspect: 1.5,
} as const
const region = { x: 0, y: 0, width: 4, height: 2, frameWidth: 4, frameHeight: 2 }
const light = Float32Array.from({ length: region.width * region.height * 4 }, (_, i) => ((i * 7) % 11) / 10)

const data = Float32Array.from({ length: 24 }, (_, i) => i / 23)
const hash = await tableHash(data)
const tables = { [hash]: { name: 'heath', table: { kind: '3d', width: 2, height: 2, data } } } as const
/** Parts of every kind, joined in every way. */
const parts = maskKinds.map(({ id }, i) => makePart(id, {}, (['or', 'and', 'not'] as const)[i % 3]))

/** One step of every operation, in the order of their list; the third of them act in places, the table is in use. */
const chain = operations
  .reduce<Chain>((built, { id }) => addStep(built, id, id === 'colourLut' ? { table: hash } : {}), [])
  .map((step, i) =>
    isFree(step) && i % 3 === 0 ? { ...step, mask: { parts, inverted: false, strength: 0.75 } } : step,
  )
const marks = addMark(
  addMark([], { redStops: -1.5, blueStops: 2 }, { x: 0.4, y: 0.6 }),
  { redStops: 0, blueStops: 1 },
  null,
)
const text = writeEditFile({
  filterNm: 590,
  chain,
  marks,
  tables,
  madeOn: { fileName: 'a.dng', fingerprint: 'a'.repeat(64) },
})

const numbers = [0, -0, 1, -1, 2, 0.5, 1e-320, -7.5, 64, 127.9, 128, 1e9, -1e9, 1e38, 1e300, -1e308, 2 ** 53]
const strangers = [null, true, false, '', 'x', '0', [], {}, [1, 'x'], [[]], { x: 0.5, y: 0.5 }, ...numbers]
type Holder = Record<string, unknown>

/** Everything in a JSON value that holds something. */
function holdersIn(value: unknown): Holder[] {
  if (typeof value !== 'object' || value === null) return []
  return [value as Holder, ...Object.values(value).flatMap(holdersIn)]
}

/** Changes one place: another value, none, a copy beside it, or a key nobody knows. */
function changeShape(random: () => number): string {
  const content = JSON.parse(text)
  const pick = (list: readonly unknown[]) => structuredClone(list[Math.floor(random() * list.length)])
  for (let changes = 1 + Math.floor(random() * 2); changes > 0; changes--) {
    const holders = holdersIn(content).filter((value) => Object.keys(value).length > 0)
    const holder = holders[Math.floor(random() * holders.length)]
    const key = String(pick(Object.keys(holder)))
    const way = random()
    if (way < 0.6) holder[key] = pick(strangers)
    else if (way < 0.75) delete holder[key]
    else if (way < 0.9) holder[key] = pick(holders.flatMap((other) => Object.values(other)))
    else if (Array.isArray(holder)) holder.push(pick(holder))
    else holder[String(pick(['mask', 'constructor', 'values', 'angleDeg']))] = pick(strangers)
  }
  return JSON.stringify(content)
}

/** Changes, drops or doubles a few letters. */
function changeLetters(random: () => number): string {
  let changed = text
  for (let changes = 1 + Math.floor(random() * 3); changes > 0; changes--) {
    const at = Math.floor(random() * changed.length)
    const letter = '0123456789eE.-+"{}[],: nul'[Math.floor(random() * 26)]
    changed = changed.slice(0, at) + (random() < 0.7 ? letter : '') + changed.slice(at + (random() < 0.7 ? 1 : 0))
  }
  return changed
}

/** What reading a changed file came to, or a complaint about it. */
async function outcomeOf(changed: string): Promise<'read' | 'refused' | string> {
  try {
    const edit = await readEditFile(changed, 'a.json')
    if (
      !renderOnCpu(describe(edit.chain, facts, { supplies: tableSupplies(edit.tables) }), light, region).every(
        Number.isFinite,
      )
    )
      return 'light without end'
    const written = writeEditFile(edit)
    return writeEditFile(await readEditFile(written, 'b.json')) === written ? 'read' : 'read back otherwise'
  } catch (reason) {
    if (!(reason instanceof EditFileError)) return String(reason)
    return /^a\.json cannot be used as an edit file, at .+: .+\.$/s.test(reason.message) ? 'refused' : reason.message
  }
}

it(`${trials} changed files: refused with place and reason, or right`, async () => {
  const counts: Record<string, number> = {}
  for (let seed = 0; seed < trials; seed++) {
    const random = randomNumbers(seed)
    const outcome = await outcomeOf(seed % 2 ? changeShape(random) : changeLetters(random))
    counts[outcome] = (counts[outcome] ?? 0) + 1
  }
  console.info('changed edit files', counts)
  expect(Object.keys(counts).toSorted()).toEqual(['read', 'refused'])
  expect(counts.read).toBeGreaterThan(trials / 20)
  expect(counts.refused).toBeGreaterThan(trials / 20)
})
