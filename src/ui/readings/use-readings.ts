// What is told of the shown frame beside its picture. It comes a moment after the picture, for which all is unknown.
import type { FrameReadings } from '../../frame/frame.ts'
import { useSession } from '../workbench-context.tsx'

export function useReadings(): FrameReadings | undefined {
  return useSession(({ shown, readings }) => (shown ? readings[shown.id] : undefined))
}

/** Shares of a channel's photosites at the ends of the sensor's range; null while they are being counted. */
type SensorShares = readonly [black: number | null, clipped: number | null]

/** One pair for each channel of the sensor. */
export function useSensorShares(): readonly SensorShares[] {
  const channels = useSession(({ shown }) => (shown?.sensorKind === 'one channel' ? 1 : 3))
  const histogram = useReadings()?.histogram
  if (!histogram) return Array.from({ length: channels }, () => [null, null] as const)
  return histogram.map(({ photosites, black, clipped }) => [black / photosites, clipped / photosites] as const)
}
