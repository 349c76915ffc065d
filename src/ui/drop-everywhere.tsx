// The whole page takes dropped files; while they hover over it, it says so.
import { useEffect, useState } from 'react'

import { droppedFiles } from './dropped-files.ts'
import { notify } from '../workbench/session-store.ts'
import type { Workbench } from '../workbench/workbench.ts'
import { useWorkbench } from './workbench-context.tsx'

const bringsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false

async function openDropped(workbench: Workbench, transfer: DataTransfer): Promise<void> {
  const { files, unreadable, folderName } = await droppedFiles(transfer)
  if (unreadable.length > 0) {
    const [first] = unreadable
    const what = unreadable.length === 1 ? `“${first}” was` : `“${first}” and ${unreadable.length - 1} more were`
    const words = `${what} not opened: the browser may not read what lies there. Copy it to this machine and drop it again.`
    notify(workbench.session, 'problem', words)
  }
  if (files.length > 0) await workbench.openFiles(files, folderName)
}

export function DropEverywhere() {
  const workbench = useWorkbench()
  const [hovering, setHovering] = useState(false)

  useEffect(() => {
    const hover = (event: DragEvent) => {
      if (!bringsFiles(event)) return
      event.preventDefault()
      setHovering(true)
    }
    const leave = (event: DragEvent) => {
      if (event.relatedTarget === null) setHovering(false)
    }
    const drop = (event: DragEvent) => {
      if (!bringsFiles(event)) return
      event.preventDefault()
      setHovering(false)
      void openDropped(workbench, event.dataTransfer!)
    }
    addEventListener('dragover', hover)
    addEventListener('dragleave', leave)
    addEventListener('drop', drop)
    return () => {
      removeEventListener('dragover', hover)
      removeEventListener('dragleave', leave)
      removeEventListener('drop', drop)
    }
  }, [workbench])

  return hovering ? <div className="drop-veil">Drop to open</div> : null
}
