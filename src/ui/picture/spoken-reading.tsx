// The reading of the probe for ears, once the probe rests, so that roaming does not talk without end.
import { useEffect, useState } from 'react'

import { useSession } from '../workbench-context.tsx'

/** Rest before the reading is spoken, in ms (our choice). */
const restMs = 600

export function SpokenReading() {
  const sentence = useSession((session) => session.probe?.reading.sentence ?? '')
  const [spoken, setSpoken] = useState('')
  useEffect(() => {
    const timer = setTimeout(() => setSpoken(sentence), restMs)
    return () => clearTimeout(timer)
  }, [sentence])
  return (
    <output className="visually-hidden" aria-live="polite">
      {spoken}
    </output>
  )
}
