// Workers that break: whoever waits is told, and the next call has another worker.
import { expect, it } from 'vitest'

import { addStep } from '../../src/edits/stack.ts'
import { defaultChain } from '../../src/edits/default-chain.ts'
import type { Frame } from '../../src/frame/frame.ts'
import { createChainPlanes } from '../../src/workbench/chain-planes.ts'
import { lastingWorker } from '../../src/workbench/lasting-worker.ts'
import { createSessionStore } from '../../src/workbench/session-store.ts'
import { createSupplyStore } from '../../src/workbench/supply-store.ts'
import { createTaskList } from '../../src/workbench/tasks.ts'
import { facts, sampleMosaic, sampleOverview } from '../gpu/sample-frame.ts'

const workerOf = (script: string) => new Worker(URL.createObjectURL(new Blob([script], { type: 'text/javascript' })))
const breaks = 'throw new Error("no memory")'
const idles = 'onmessage = () => {}'

it('rejects what waits with its sentence, and starts anew with the next call', async () => {
  let started = 0
  const call = lastingWorker<() => void>(() => workerOf(started++ === 0 ? breaks : idles), 'It is gone.')
  const waiting = [call(() => new Promise(() => {})), call(() => new Promise(() => {}))]
  for (const one of waiting) await expect(one).rejects.toThrow('It is gone.')
  expect(started).toBe(1)
  expect(await call(() => Promise.resolve(7))).toBe(7)
  expect(started).toBe(2)
})

it('planes that cannot be made are told of, and asked for again', async () => {
  let started = 0
  const supplies = createSupplyStore()
  const tasks = createTaskList(createSessionStore())
  const planes = createChainPlanes(supplies, tasks, () => (started++, workerOf(breaks)))
  const overview = sampleOverview(24, 16, 2)
  const frame = { id: 'f', frame: { sensor: sampleMosaic(48, 32), overview, facts } as unknown as Frame }
  const [sun, shade] = [
    [0.2, 0.5, 0.5, -0.37, -1],
    [0.8, 0.5, 0.8, -0.8, -4],
  ]
  const chain = addStep(defaultChain(facts), 'secondLight', { sun, shade })
  await expect(planes.ready(frame, chain)).rejects.toThrow(/gave up/)
  await expect(planes.ready(frame, chain)).rejects.toThrow(/gave up/)
  expect(started).toBe(2)
})
