// The key that does what a button does, beside its name; gone where single keys are switched off.
import { useStore } from 'zustand'

import { screen } from './screen-store.ts'

export function KeyHint({ children }: { children: string }) {
  const keysOn = useStore(screen, (state) => state.singleKeys)
  if (!keysOn) return null
  return (
    <kbd className="key-hint" aria-hidden="true">
      {children}
    </kbd>
  )
}
