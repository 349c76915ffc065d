// A colour table of the shown frame that leaves as a file: which steps may go, what the file is like, and its way to the disk.
import type { EditStore } from '../edits/edit-store.ts'
import { isMapping } from '../edits/colour-map.ts'
import { tableFileName, type TableFileSettings } from '../export/table-file.ts'
import { isExact } from '../export/step-nodes.ts'
import { spreadPixels } from '../frame/spread-pixels.ts'
import { describe } from '../pipeline/describe.ts'
import { isPointwise } from '../pipeline/pointwise-map.ts'
import { saveFile } from './save-file.ts'
import type { ShownPicture } from './picture.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { SupplyStore } from './supply-store.ts'
import { inTableWorker } from './table-client.ts'
import type { Workbench } from './workbench.ts'

/** Pixels of the frame that a file is measured with (our choice): enough for one colour in a hundred to show. */
const measuredPixels = 4096

export type BakeCommands = Pick<Workbench, 'bakeSteps' | 'bakeTable' | 'saveTable'>

interface BakeContext {
  readonly session: SessionStore
  readonly edits: EditStore
  readonly supplies: SupplyStore
  shown(): ShownPicture | null
}

const mediaTypes: Readonly<Record<TableFileSettings['format'], string>> = {
  cube: 'text/plain',
  clf: 'application/xml',
  icc: 'application/vnd.iccprofile',
}

export function createBakeCommands({ session, edits, supplies, shown }: BakeContext): BakeCommands {
  const chainOf = ({ id }: ShownPicture) => edits.history(id)?.chain

  return {
    bakeSteps() {
      const picture = shown()
      const chain = picture && chainOf(picture)
      if (!picture || !chain) return []
      const { steps } = describe(chain, picture.facts, { supplies: supplies.of(picture.id) })
      return steps
        .filter(({ operation }) => operation.place !== 'neutral' && operation.place !== 'output')
        .map((step) => ({
          stepId: step.stepId,
          title: step.operation.title,
          mayLeave: isPointwise(step),
          isExact: isExact(step),
          isMapping: isMapping({ operation: step.operation.id }),
        }))
    },
    async bakeTable(settings, signal) {
      const picture = shown()
      const chain = picture && chainOf(picture)
      if (!picture || !chain) throw new Error('No frame is shown.')
      const { facts, id, frame } = picture
      const pixels = spreadPixels(frame.overview, measuredPixels)
      return inTableWorker(
        (remote) => remote.bake({ chain, facts, supplies: supplies.of(id), settings, pixels }),
        signal,
      )
    },
    async saveTable(settings, { content }) {
      const name = tableFileName(settings)
      const mediaType = mediaTypes[settings.format]
      const isWritten = await saveFile(session, { name, description: 'Colour table', mediaType, content })
      if (isWritten) notify(session, 'note', `“${name}” is written.`)
    },
  }
}
