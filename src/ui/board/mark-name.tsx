// The name of a mark, edited in place: Enter or leaving keeps it, Escape leaves the old one.
import { useEffect, useRef, type KeyboardEvent } from 'react'

interface NameFieldProps {
  readonly name: string
  /** With the new name, or null where the old one stays; `byKey` when the keyboard ended it. */
  readonly onEnd: (name: string | null, byKey: boolean) => void
}

function NameField({ name, onEnd }: NameFieldProps) {
  const field = useRef<HTMLInputElement>(null)
  const ended = useRef(false)
  useEffect(() => {
    field.current?.focus()
    field.current?.select()
  }, [])

  const end = (typed: string | null, byKey: boolean) => {
    // Taking the field away takes the focus from it, which must not count once more.
    if (ended.current) return
    ended.current = true
    onEnd(typed, byKey)
  }
  const press = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') end(event.currentTarget.value, true)
    else if (event.key === 'Escape') end(null, true)
    event.stopPropagation()
  }
  return (
    <input
      ref={field}
      className="mark-name-field"
      aria-label={`Name of ${name}`}
      autoComplete="off"
      maxLength={60}
      defaultValue={name}
      onBlur={(event) => end(event.currentTarget.value, false)}
      onKeyDown={press}
    />
  )
}

interface MarkNameProps extends NameFieldProps {
  readonly isEditing: boolean
  readonly tabIndex: number
  readonly onEdit: () => void
}

export function MarkName({ name, isEditing, tabIndex, onEdit, onEnd }: MarkNameProps) {
  if (isEditing) return <NameField name={name} onEnd={onEnd} />
  return (
    <button type="button" className="mark-name" tabIndex={tabIndex} aria-label={`${name}: rename`} onClick={onEdit}>
      {name}
    </button>
  )
}
