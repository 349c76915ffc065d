// A button shown as a symbol, with its name for everyone: spoken, and on pointing or focus.
import type { ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import { Tooltip, TooltipTrigger } from 'react-aria-components/Tooltip'

interface IconButtonProps {
  readonly label: string
  readonly children: ReactNode
  readonly className?: string
  readonly isDisabled?: boolean
  readonly onPress?: () => void
}

export function IconButton({ label, children, className = '', isDisabled, onPress }: IconButtonProps) {
  return (
    <TooltipTrigger delay={500} closeDelay={80}>
      <Button className={`icon-button ${className}`} aria-label={label} isDisabled={isDisabled} onPress={onPress}>
        {children}
      </Button>
      <Tooltip className="tooltip" offset={6}>
        {label}
      </Tooltip>
    </TooltipTrigger>
  )
}
