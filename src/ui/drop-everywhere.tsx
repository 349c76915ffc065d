// The whole page takes dropped files; while they hover over it, it says so.
import { useEffect, useState } from 'react'

import { droppedFiles } from './dropped-files.ts'
import { useWorkbench } from './workbench-context.tsx'

const bringsFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false

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
      void droppedFiles(event.dataTransfer!).then(({ files, folderName }) => workbench.openFiles(files, folderName))
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
