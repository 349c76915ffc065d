// Planes made in the worker are those that the command line makes, the latest order stands, and what cannot be made is taken back.
import { expect, test } from 'vitest'

import { defaultChain } from '../../src/edits/default-chain.ts'
import { addStep, setValues } from '../../src/edits/stack.ts'
import type { Frame } from '../../src/frame/frame.ts'
import { planeSource, suppliesOf } from '../../src/pipeline/planes-of-chain.ts'
import { createChainPlanes } from '../../src/workbench/chain-planes.ts'
import { createSessionStore } from '../../src/workbench/session-store.ts'
import { createSupplyStore } from '../../src/workbench/supply-store.ts'
import { createTaskList } from '../../src/workbench/tasks.ts'
import { facts, sampleMosaic, sampleOverview } from '../gpu/sample-frame.ts'

const frame = {
  sensor: sampleMosaic(480, 320),
  overview: sampleOverview(240, 160, 2),
  facts,
} as unknown as Frame
const sun = [0.2, 0.5, 0.5, -0.37, -1]
const shade = [0.8, 0.5, 0.8, -0.8, -4]
const name = 'secondLight-1 shade'

test('worker and command line make the same plane; of two orders the later stands; picks of one light leave none', async () => {
  const supplies = createSupplyStore()
  const planes = createChainPlanes(supplies, createTaskList(createSessionStore()))
  const ready = (chain: Parameters<typeof planes.ready>[1]) => planes.ready({ id: 'f', frame }, chain)
  const chain = addStep(defaultChain(facts), 'secondLight', { sun, shade })
  const graduated = setValues(chain, 'secondLight-1', { way: 'graduated' })

  await Promise.all([ready(chain), ready(graduated)])
  expect(supplies.of('f')[name]).toEqual(suppliesOf(graduated, planeSource(frame))[name])
  await ready(chain)
  const found = supplies.of('f')[name]
  expect(found).toEqual(suppliesOf(chain, planeSource(frame))[name])
  await ready(chain)
  expect(supplies.of('f')[name]).toBe(found)
  await ready(setValues(chain, 'secondLight-1', { shade: sun }))
  expect(supplies.of('f')[name]).toBeUndefined()
})
