// Neutrals of a roll: ratios are the gains turned around, and mean and spread are those of a worked example.
import { expect, test } from 'vitest'
import { createEditStore } from '../../src/edits/edit-store.ts'
import { addStep, setEnabled } from '../../src/edits/stack.ts'
import { groupNeutrals, rollNeutrals } from '../../src/workbench/roll-neutrals.ts'

const entry = (id: string, camera: string | undefined, statedFilterNm: number | null | undefined) =>
  ({ id, fileName: `${id}.dng`, state: { kind: 'ready' }, pictureUrl: null, statedFilterNm, camera }) as const

test('frames of one camera behind one filter come together; those without an acting neutral are left out', () => {
  const edits = createEditStore()
  const chain = (redStops: number, blueStops: number) =>
    addStep(addStep([], 'neutral', { redStops, blueStops }), 'outputTransform')
  edits.open('a', chain(-1, 0.5))
  edits.open('b', chain(-1.6, 1.3))
  edits.open('c', chain(-0.5, 0.25))
  edits.open('d', setEnabled(chain(-3, 3), 'neutral-1', false))
  const entries = [
    entry('a', 'Willow 3', 590),
    entry('c', undefined, undefined),
    entry('b', 'Willow 3', 590),
    entry('d', 'Willow 3', 590),
    entry('unread', undefined, undefined),
  ]
  const neutrals = rollNeutrals(entries, edits)
  expect(neutrals.map(({ fileName }) => fileName)).toEqual(['a.dng', 'c.dng', 'b.dng'])
  expect(neutrals[0]).toMatchObject({ log2RedGreen: 1, log2BlueGreen: -0.5, camera: 'Willow 3', filterNm: 590 })

  const [first, second] = groupNeutrals(neutrals)
  expect(first.frames.map(({ frameId }) => frameId)).toEqual(['a', 'b'])
  // (1, −.5) and (1.6, −1.3) lie 1 stop apart: each is half a stop from (1.3, −.9).
  expect(first.log2RedGreen).toBeCloseTo(1.3, 12)
  expect(first.log2BlueGreen).toBeCloseTo(-0.9, 12)
  expect(first.spreadStops).toBeCloseTo(0.5, 12)
  expect(second).toMatchObject({ camera: '', filterNm: undefined, spreadStops: 0 })
})
