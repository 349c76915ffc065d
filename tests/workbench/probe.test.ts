// The probe's commands on a synthetic frame whose colours are known by construction.
import { expect, it } from 'vitest'

import { createEditStore } from '../../src/edits/edit-store.ts'
import { addStep } from '../../src/edits/stack.ts'
import type { CfaColour, Frame, FrameFacts } from '../../src/frame/frame.ts'
import { createProbeCommands } from '../../src/workbench/probe.ts'
import { createSessionStore } from '../../src/workbench/session-store.ts'
import { makeMosaic, sixBySix } from '../support/synthetic-sensor.ts'

const [width, height] = [600, 400]
const noise = { fullScaleElectrons: 20_000, readNoiseElectrons: 3 }
const [grey, leaf] = [
  [0.5, 0.25, 0.125],
  [0.6, 0.3, 0.6],
]
const light = (x: number, _y: number, c: CfaColour) => (x < width / 2 ? grey : leaf)[c]

function probing() {
  const session = createSessionStore()
  const edits = createEditStore()
  edits.open('one', addStep([], 'neutral'))
  const sensor = makeMosaic({ width, height, light })
  const picture = { id: 'one', frame: { sensor } as Frame, facts: { noise } as FrameFacts }
  let shown = picture
  const commands = createProbeCommands(session, edits, () => shown)
  const show = (other: Frame['sensor']) => (shown = { ...picture, frame: { sensor: other } as Frame })
  return { session, edits, commands, show, probe: () => session.getState().probe }
}

it('samples from one cell to a twentieth of the frame', () => {
  const { commands, session, probe } = probing()
  commands.setSampleRadius(0)
  // The middle of the cell in column 75, row 100.
  commands.roam({ x: 151 / width, y: 201 / height })
  expect(probe()?.reading.cells).toBe(1)
  commands.setSampleRadius(10_000)
  const { sampleRadiusPx } = session.getState()
  expect((Math.PI * sampleRadiusPx ** 2) / (width * height)).toBeCloseTo(0.05, 6)
})

it('holds a sample from a larger frame to a twentieth of this one, and one cell to a whole cell', () => {
  const { commands, session, show } = probing()
  commands.setSampleRadius(10_000)
  show(makeMosaic({ width: 150, height: 100, light }))
  commands.roam({ x: 0.5, y: 0.5 })
  expect((Math.PI * session.getState().sampleRadiusPx ** 2) / (150 * 100)).toBeCloseTo(0.05, 6)
  show(makeMosaic({ width: 150, height: 102, light, cfa: sixBySix }))
  commands.setSampleRadius(0)
  expect(session.getState().sampleRadiusPx).toBe(1.5)
})

it('samples an outline, commits its neutral, and tells of one that holds nothing', () => {
  const { commands, edits, session, probe } = probing()
  const right = [
    [0.6, 0.1],
    [0.9, 0.1],
    [0.9, 0.9],
    [0.6, 0.9],
  ] as const
  commands.probeOutline(right)
  expect(probe()).toMatchObject({ outline: right, place: { x: 0.75, y: 0.5 } })
  expect(probe()!.neutral!.redStops).toBeCloseTo(-1, 2)
  expect(probe()!.neutral!.blueStops).toBeCloseTo(-1, 2)
  commands.setSampleRadius(12)
  expect(probe()?.outline).toBe(right)
  const { neutral } = probe()!
  commands.commitProbe()
  expect(edits.history('one')?.chain[0].values).toMatchObject(neutral!)
  expect(probe()).toBe(null)

  commands.probeOutline([
    [0.5, 0.5],
    [0.5, 0.5],
    [0.5, 0.5],
  ])
  expect(probe()).toBe(null)
  expect(session.getState().notices.at(-1)?.text).toContain('holds no part of the picture')
})

it('lets go of what was sampled the other way', () => {
  const { commands, session, probe } = probing()
  commands.roam({ x: 0.2, y: 0.5 })
  expect(probe()).not.toBe(null)
  commands.setSampleWay('outline')
  expect(session.getState()).toMatchObject({ sampleWay: 'outline', probe: null })
})

it('takes every tool up plain: nothing sampled, the ring, for the frame’s neutral', () => {
  const { commands, session, probe } = probing()
  commands.setTool('probe')
  commands.setProbeTarget({ stepId: 'secondLight-1', light: 'sun' })
  commands.setSampleWay('outline')
  commands.roam({ x: 0.2, y: 0.5 })
  expect(probe()).not.toBe(null)
  commands.setTool('brush')
  expect(session.getState()).toMatchObject({ tool: 'brush', sampleWay: 'ring', probe: null, probeTarget: null })
})
