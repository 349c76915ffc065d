// A dialog over the bench: title, content, a way out.
import { X } from 'lucide-react'
import type { ReactNode } from 'react'
import { Dialog } from 'react-aria-components/Dialog'
import { Heading } from 'react-aria-components/Heading'
import { Modal, ModalOverlay } from 'react-aria-components/Modal'

import { IconButton } from '../icon-button.tsx'
import { openDialog } from '../screen-store.ts'

interface DialogFrameProps {
  readonly title: string
  readonly className: string
  readonly children: ReactNode
}

export function DialogFrame({ title, className, children }: DialogFrameProps) {
  const close = () => openDialog(null)
  return (
    <ModalOverlay className="dialog-veil" isOpen isDismissable onOpenChange={close}>
      <Modal className={`dialog ${className}`}>
        <Dialog>
          <header className="dialog-head">
            <Heading slot="title">{title}</Heading>
            <IconButton label="Close" onPress={close}>
              <X />
            </IconButton>
          </header>
          {children}
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}
