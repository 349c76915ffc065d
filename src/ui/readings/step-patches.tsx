// A row of small patches: the reference places as they look after a step, always in the same order.
import { patchesAfter, showPlaces, usePlaceColours } from './place-colours.ts'

export function StepPatches({ stepId }: { stepId: string | null }) {
  const colours = usePlaceColours(patchesAfter(stepId))
  return (
    <span
      className="step-patches"
      aria-hidden="true"
      onPointerEnter={() => showPlaces(true)}
      onPointerLeave={() => showPlaces(false)}
    >
      {colours !== '' &&
        // oxlint-disable-next-line react/no-array-index-key -- the places keep their order
        colours.split(',').map((colour, i) => <span key={i} className="patch" style={{ background: colour }} />)}
    </span>
  )
}
