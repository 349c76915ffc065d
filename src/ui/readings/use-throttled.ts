// A value that changes often, passed on at most so often; the last one always arrives.
import { useEffect, useRef, useState } from 'react'

export function useThrottled<T>(value: T, everyMs: number): T {
  const [passed, setPassed] = useState(value)
  const passedAt = useRef(-Infinity)
  useEffect(() => {
    const wait = Math.max(0, passedAt.current + everyMs - performance.now())
    const timer = setTimeout(() => {
      passedAt.current = performance.now()
      setPassed(value)
    }, wait)
    return () => clearTimeout(timer)
  }, [value, everyMs])
  return passed
}
