// Black and white point from the picture: where a tenth of a percent is darker and half a percent brighter. What the points
// that stand now cut off is always said.
import { Button } from 'react-aria-components/Button'

import { pointsAt } from '../../operations/tone-curve.ts'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { shareText } from '../readings/share-text.ts'
import { useLevelSpread } from './use-level-spread.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Shares of the picture that the automatic puts below black and above white (our choice). */
const darkShare = 0.001
const brightShare = 0.005

export function CurvePointsRoom({ step }: StepRoomProps) {
  const workbench = useWorkbench()
  const spread = useLevelSpread(step.id)
  const white = 2 ** Number(step.values.whiteEv)
  const black = (white * Number(step.values.blackPercent)) / 100
  const set = () => {
    if (!spread) return
    const points = pointsAt(spread.levelAt(darkShare), spread.levelAt(1 - brightShare))
    workbench.setValues(step.id, { ...points }, 'Black and white point from the picture')
  }
  return (
    <div className="room">
      {spread && (
        <p className="control-note">
          Darker than black: {shareText(spread.shareBelow(black))} of the picture. Brighter than white:{' '}
          {shareText(1 - spread.shareBelow(white))}.
        </p>
      )}
      <Button className="button wide" isDisabled={!spread} onPress={set}>
        Set both from the picture
      </Button>
      <p className="control-note">
        Black where {shareText(darkShare)} is darker, white where {shareText(brightShare)} is brighter.
      </p>
    </div>
  )
}
