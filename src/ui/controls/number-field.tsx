// A number that is typed: Enter or leaving the field keeps it, Escape leaves the old one, up and down step what stands there.
import { useRef, useState, type KeyboardEvent } from 'react'

import { formatNumber, parseNumber } from '../../text/format-number.ts'

interface NumberFieldProps {
  readonly label: string
  /** Null where there is none yet. */
  readonly value: number | null
  readonly decimals: number
  readonly signed?: boolean
  readonly step: number
  /** Limits of what may be typed; absent means none. */
  readonly min?: number
  readonly max?: number
  readonly className?: string
  readonly onCommit: (value: number) => void
}

export function NumberField(props: NumberFieldProps) {
  const { label, value, decimals, signed = false, step, min = -Infinity, max = Infinity, onCommit } = props
  const [draft, setDraft] = useState<string | null>(null)
  const abandoned = useRef(false)
  const unreadable = draft !== null && parseNumber(draft) === null
  const bound = (number: number) => Math.min(Math.max(number, min), max)

  const keep = () => {
    const typed = draft === null || abandoned.current ? null : parseNumber(draft)
    abandoned.current = false
    setDraft(null)
    if (typed !== null && bound(typed) !== value) onCommit(bound(typed))
  }
  const press = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') event.currentTarget.blur()
    else if (event.key === 'Escape') {
      abandoned.current = true
      event.currentTarget.blur()
    } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      event.preventDefault()
      const size = event.shiftKey ? step / 10 : step
      const from = (draft === null ? null : parseNumber(draft)) ?? value ?? Math.max(min, 0)
      onCommit(bound(from + (event.key === 'ArrowUp' ? size : -size)))
      setDraft(null)
    } else return
    event.stopPropagation()
  }

  return (
    <input
      className={`number-field ${props.className ?? ''}`}
      type="text"
      inputMode="decimal"
      autoComplete="off"
      aria-label={label}
      aria-invalid={unreadable || undefined}
      value={draft ?? (value === null ? '' : formatNumber(value, decimals, signed))}
      onFocus={(event) => event.currentTarget.select()}
      onChange={(event) => setDraft(event.currentTarget.value)}
      onBlur={keep}
      onKeyDown={press}
    />
  )
}
