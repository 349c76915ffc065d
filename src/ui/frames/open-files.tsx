// The ways into the program: files, a folder, the demo roll.
import type { ReactNode } from 'react'
import { Button } from 'react-aria-components/Button'
import { FileTrigger } from 'react-aria-components/FileTrigger'

import { useWorkbench } from '../workbench-context.tsx'

interface OpenButtonProps {
  readonly className: string
  readonly children: ReactNode
  /** Called once something was chosen. */
  readonly onChosen?: () => void
}

/** The folder that a chooser of folders gave files from. */
const folderOf = (files: readonly File[]) => files[0]?.webkitRelativePath.split('/')[0]

export function OpenFilesButton({
  className,
  children,
  onChosen,
  folder = false,
}: OpenButtonProps & { folder?: boolean }) {
  const workbench = useWorkbench()
  const open = (files: readonly File[]) => {
    onChosen?.()
    void workbench.openFiles(files, folder ? folderOf(files) : undefined)
  }
  return (
    <FileTrigger allowsMultiple acceptDirectory={folder} onSelect={(files) => files && open([...files])}>
      <Button className={className}>{children}</Button>
    </FileTrigger>
  )
}

export function OpenDemoButton({ className, children, onChosen }: OpenButtonProps) {
  const workbench = useWorkbench()
  const open = () => {
    onChosen?.()
    void workbench.openDemoRoll()
  }
  return (
    <Button className={className} onPress={open}>
      {children}
    </Button>
  )
}
