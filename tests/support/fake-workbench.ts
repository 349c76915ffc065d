// A workbench in memory for tests of the screen: real stores and edits, a painted picture, and a list of what was asked of it.
import { createStore } from 'zustand/vanilla'

import { createEditStore } from '../../src/edits/edit-store.ts'
import { withLightPick } from '../../src/edits/light-picks.ts'
import { addStep, type Chain } from '../../src/edits/stack.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { traceChain } from '../../src/pipeline/trace-chain.ts'
import { createChainCommands } from '../../src/workbench/chain-commands.ts'
import { createMapCommands } from '../../src/workbench/map-commands.ts'
import { createMaskCommands } from '../../src/workbench/mask-commands.ts'
import { createSupplyStore } from '../../src/workbench/supply-store.ts'
import { createMarkCommands } from '../../src/workbench/mark-commands.ts'
import { rollNeutrals } from '../../src/workbench/roll-neutrals.ts'
import { neutralOutlook } from '../../src/workbench/neutral-outlook.ts'
import { changeEntry, createSessionStore, dismissNotice } from '../../src/workbench/session-store.ts'
import type { Place, Probe, RollEntry, Session, ShownFrame } from '../../src/workbench/session.ts'
import { cssOf, layoutOf, placeAt, zoomedAbout } from '../../src/workbench/view-geometry.ts'
import type { ShownEdit, Workbench } from '../../src/workbench/workbench.ts'
import { fakeTables } from './fake-tables.ts'
import { paintScene, sceneColour } from './painted-scene.ts'

const frameSize = { width: 6016, height: 4016 }

const metadata = {
  make: 'Made-up',
  model: 'Converted One',
  lens: '35 mm f/2',
  iso: 200,
  exposureTimeS: 1 / 250,
  apertureF: 8,
  focalLengthMm: 35,
  takenAt: '2024:05:07 14:03:20',
}

/** Hills over the stops, the red one running into saturation. */
const fakeHistogram = [0.94, 0.7, 0.55].map((middle, channel) => ({
  photosites: channel === 1 ? 12_000_000 : 6_000_000,
  clipped: channel === 0 ? 31_000 : 0,
  black: channel === 2 ? 240 : 0,
  bins: Array.from({ length: 60 }, (_, i) => Math.round(1e5 * Math.exp(-(((i / 60 - middle) / 0.12) ** 2)))),
}))
const fakePlaces = [
  { x: 0.3, y: 0.2 },
  { x: 0.6, y: 0.75 },
  { x: 0.8, y: 0.35 },
  { x: 0.2, y: 0.9 },
  { x: 0.5, y: 0.6 },
]

function shownFrame(entry: RollEntry): ShownFrame {
  return {
    id: entry.id,
    fileName: entry.fileName,
    ...frameSize,
    sensorKind: 'Bayer mosaic',
    facts: {
      meanCameraRgb: [0.3, 0.2, 0.15],
      referenceNeutral: [0.6, -0.4],
      noise: { fullScaleElectrons: 50_000, readNoiseElectrons: 4 },
      cameraToXyz: null,
      filterNm: entry.statedFilterNm,
      aspect: frameSize.width / frameSize.height,
    },
    metadata,
    developed: null,
    warnings: [],
  }
}

/** The scene's colour as a sensor would give it, and its peak. */
function cameraColour(x: number, y: number): [number, number, number, number] {
  const [red, green, blue] = sceneColour(x, y).map((encoded) => encoded ** 2.2)
  return [red, green, blue, Math.max(red, green, blue)]
}

/** What the probe would say of the painted scene. */
function probeAt(place: Place): Probe {
  const [red, green, blue] = sceneColour(place.x, place.y)
  const clipped = red > 0.93
  return {
    place,
    outline: null,
    reading: {
      cells: 412,
      spreadStops: 0.02,
      twoMaterials: false,
      clippedShare: clipped ? 0.4 : 0,
      errorStops: 0.01,
      reliability: clipped ? 'clipped' : 'good',
      sentence: clipped
        ? 'Clipped: every cell here is saturated; move to a darker place.'
        : 'Good pick: 412 cells, none clipped, ±0.01 stop.',
      meanCameraRgb: [red, green, blue],
    },
    neutral: clipped ? null : { redStops: Math.log2(green / red), blueStops: Math.log2(green / blue) },
  }
}

function firstChain(): Chain {
  let chain: Chain = []
  for (const id of ['neutral', 'channelMix', 'hueTurn', 'exposureContrast', 'outputTransform'])
    chain = addStep(chain, id)
  return chain
}

export interface FakeWorkbench extends Workbench {
  /** Commands in the order in which they came, with their arguments. */
  readonly calls: [name: string, ...args: unknown[]][]
}

/** A workbench with these frames in its roll, the first ready one shown. */
export function createFakeWorkbench(entries: readonly RollEntry[]): FakeWorkbench {
  const session = createSessionStore()
  const edits = createEditStore()
  const edit = createStore<{ readonly shown: ShownEdit | null }>(() => ({ shown: null }))
  const calls: FakeWorkbench['calls'] = []
  let shownOn: HTMLCanvasElement | null = null
  const viewport = () => ({
    width: shownOn?.clientWidth ?? 0,
    height: shownOn?.clientHeight ?? 0,
    devicePixelRatio,
  })
  const layout = () => layoutOf(session.getState().view, frameSize, viewport())
  const set = (change: Partial<Session>) => session.setState(change)
  const commands = createChainCommands(session, edits)

  edits.store.subscribe(({ frames }) => {
    const history = frames[session.getState().shownId ?? '']
    const undoName = history?.past.at(-1)?.name ?? null
    const redoName = history?.future.at(-1)?.name ?? null
    const marks = edits.marks(session.getState().shownId ?? '')
    const shown = history && session.getState().shown ? { chain: history.chain, marks, undoName, redoName } : null
    edit.setState({ shown })
  })

  async function showFrame(id: string) {
    const entry = session.getState().entries.find((one) => one.id === id)!
    set({ shownId: id, shown: entry.state.kind === 'ready' ? shownFrame(entry) : null })
    set({ readings: { [id]: { histogram: fakeHistogram, places: fakePlaces } } })
    edits.open(id, edits.history(id)?.chain ?? firstChain())
    set({ selectedStepId: edits.history(id)!.chain[0].id, probe: null })
  }

  function attachPicture(host: HTMLElement) {
    const canvas = document.createElement('canvas')
    canvas.className = 'picture-canvas'
    host.prepend(canvas)
    const scene = paintScene(900, 600)
    const draw = () => {
      const { left, top, scale } = layout()
      const context = canvas.getContext('2d')!
      canvas.width = canvas.clientWidth
      canvas.height = canvas.clientHeight
      if (session.getState().shown)
        context.drawImage(scene, left, top, frameSize.width * scale, frameSize.height * scale)
    }
    shownOn = canvas
    const observer = new ResizeObserver(draw)
    observer.observe(canvas)
    const stop = session.subscribe(draw)
    return () => {
      stop()
      observer.disconnect()
      canvas.remove()
    }
  }

  const workbench: Workbench = {
    ...commands,
    ...createMapCommands({
      session,
      edit,
      edits,
      keeping: { tablesOf: async () => ({}), adoptTables() {} },
      store: { maps: async () => undefined, keepMaps: async () => {} },
    }),
    ...createMarkCommands(session, edits),
    ...createMaskCommands(session, edits, createSupplyStore()),
    session,
    edit,
    async openFiles() {},
    async openDemoRoll() {
      set({ entries, rollName: 'Lower meadow' })
      const first = entries.find((entry) => entry.state.kind === 'ready')
      if (first) await showFrame(first.id)
    },
    showFrame,
    async showNeighbour(offset) {
      const { entries: now, shownId } = session.getState()
      const next = now[now.findIndex((entry) => entry.id === shownId) + offset]
      if (next) await showFrame(next.id)
    },
    stateFilter: (id, statedFilterNm) => changeEntry(session, id, { statedFilterNm }),
    attachPicture,
    setView: (view) => set({ view: { ...session.getState().view, ...view } }),
    zoomAbout: (place, factor) =>
      set({ view: zoomedAbout(session.getState().view, frameSize, viewport(), place, factor) }),
    placeAt: (x, y) => (session.getState().shown ? placeAt(layout(), frameSize, x, y) : null),
    cssOf(place) {
      if (!session.getState().shown) return null
      const { scale } = layout()
      return { ...cssOf(layout(), frameSize, place), radius: session.getState().sampleRadiusPx * scale }
    },
    showClipping: (clippingShown) => set({ clippingShown }),
    preview: (preview) => set({ preview }),
    setDivide: (divide) => set({ divide }),
    trace(chain, places) {
      const { shown } = session.getState()
      if (!shown) return null
      const description = describe(chain, shown.facts, { space: 'srgb' })
      return places.map(({ x, y }) => traceChain(description, cameraColour(x, y), x, y))
    },
    async pixelsBefore() {
      if (!session.getState().shown) return null
      const pixels = Array.from({ length: 600 }, (_, i) => cameraColour((i % 30) / 30, Math.floor(i / 30) / 20))
      return Float32Array.from(pixels.flatMap(([red, green, blue]) => [red, green, blue]))
    },
    thumbnails: async (chains, width) =>
      session.getState().shown && chains.map(() => new ImageData(width, Math.floor((width * 2) / 3))),
    colourBefore: (_stepId, { x, y }) => [...sceneColour(x, y)],
    rollNeutrals: () => rollNeutrals(session.getState().entries, edits),
    neutralOutlook() {
      const { shown } = session.getState()
      const chain = edit.getState().shown?.chain
      return shown && chain ? neutralOutlook(chain, shown.facts, {}) : null
    },
    setTool: (tool) => set({ tool, probe: null, probeTarget: null, sampleWay: 'ring' }),
    setProbeTarget: (probeTarget) => set({ probeTarget }),
    showReach: (reachOf) => set({ reachOf }),
    setSampleRadius: (sampleRadiusPx) => set({ sampleRadiusPx }),
    setSampleWay: (sampleWay) => set({ sampleWay, probe: null }),
    probeOutline(outline) {
      const [x, y] = [0, 1].map((axis) => outline.reduce((sum, corner) => sum + corner[axis] / outline.length, 0))
      set({ probe: { ...probeAt({ x, y }), outline } })
    },
    roam: (place) => set({ probe: place && probeAt(place) }),
    commitProbe() {
      const { probe, probeTarget, shownId } = session.getState()
      const step = edit.getState().shown?.chain[0]
      const mean = probe?.reading.meanCameraRgb
      if (probeTarget && mean && shownId)
        edits.apply(shownId, 'Pick', (chain) => withLightPick(chain, probeTarget, mean, probe.place))
      else if (probe?.neutral && step) commands.setValues(step.id, { ...probe.neutral }, 'Neutral')
      set({ probe: null })
    },
    escape: () => set({ probe: null }),
    async saveEdit() {},
    async loadEdit() {},
    startAfresh() {},
    countKept: async () => 3,
    async forgetKept() {},
    ...fakeTables(session, edit, commands),
    async exportShown() {},
    async exportBoard() {},
    cancelTask: (id) => set({ tasks: session.getState().tasks.filter((task) => task.id !== id) }),
    dismissNotice: (id) => dismissNotice(session, id),
  }

  const recorded = Object.entries(workbench).map(([name, member]) => [
    name,
    typeof member === 'function'
      ? (...args: unknown[]) => {
          calls.push([name, ...args])
          return (member as (...given: unknown[]) => unknown)(...args)
        }
      : member,
  ])
  return { ...(Object.fromEntries(recorded) as Workbench), calls }
}

/** A small roll: ready frames, one being read, one that failed. */
export function smallRoll(): RollEntry[] {
  const states: RollEntry['state'][] = [
    { kind: 'ready' },
    { kind: 'ready' },
    { kind: 'ready' },
    { kind: 'working', doing: 'Reading the sensor', fraction: 0.4 },
    { kind: 'waiting' },
    { kind: 'failed', reason: 'The file ends in the middle of its picture data. Copy it from the card again.' },
  ]
  const pictureUrl = paintScene(180, 120).toDataURL()
  return states.map((state, i) => ({
    id: `frame-${i + 1}`,
    fileName: `meadow-${String(i + 1).padStart(2, '0')}.dng`,
    state,
    pictureUrl: state.kind === 'ready' ? pictureUrl : null,
    statedFilterNm: i === 0 ? 590 : undefined,
  }))
}
