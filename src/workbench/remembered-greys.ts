// The grey that was chosen last for each camera and filter, kept in the browser: greys of one camera behind one filter lie near
// each other, so it helps to find those of the next frame.
import type { RememberedGrey } from '../analysis/candidates/suggestion.ts'
import type { NeutralGains } from '../edits/marks.ts'
import type { ShownFrame } from './session.ts'
import { readSetting, writeSetting } from './settings.ts'

const setting = 'greys'

/** Camera and filter as one name, or null while either is not known. */
function keyOf({ metadata: { make, model }, facts: { filterNm } }: ShownFrame): string | null {
  return model === undefined || filterNm === undefined ? null : `${make ?? ''} ${model} ${filterNm ?? 'none'}`
}

/** All that is kept; what cannot be read counts as nothing. */
function read(): Record<string, RememberedGrey> {
  try {
    const kept: unknown = JSON.parse(readSetting(setting) ?? '{}')
    const entries = Object.entries(kept as Record<string, unknown>).filter(
      (entry): entry is [string, [number, number]] =>
        Array.isArray(entry[1]) && entry[1].length === 2 && entry[1].every(Number.isFinite),
    )
    return Object.fromEntries(entries)
  } catch {
    return {}
  }
}

export function rememberedGrey(frame: ShownFrame): RememberedGrey | undefined {
  const key = keyOf(frame)
  return key === null ? undefined : read()[key]
}

export function rememberGrey(frame: ShownFrame, { redStops, blueStops }: NeutralGains): void {
  const key = keyOf(frame)
  if (key !== null) writeSetting(setting, JSON.stringify({ ...read(), [key]: [-redStops, -blueStops] }))
}
