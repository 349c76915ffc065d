// Files dropped on the page, with everything inside dropped folders.

async function entriesIn(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader()
  const all: FileSystemEntry[] = []
  // A reader hands out a folder in parts until a part is empty.
  for (;;) {
    const part = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject))
    if (part.length === 0) return all
    all.push(...part)
  }
}

async function filesIn(entry: FileSystemEntry): Promise<File[]> {
  if (entry.isFile) {
    return [await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject))]
  }
  const inside = await entriesIn(entry as FileSystemDirectoryEntry)
  return (await Promise.all(inside.map(filesIn))).flat()
}

interface Drop {
  readonly files: File[]
  /** Name of the first dropped folder; undefined where files alone were dropped. */
  readonly folderName: string | undefined
}

/** All files of a drop. Must be called while the event is being handled: afterwards the browser takes its content back. */
export async function droppedFiles(transfer: DataTransfer): Promise<Drop> {
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null)
  const plain = [...transfer.files]
  const folderName = entries.find((entry) => entry.isDirectory)?.name
  // Some programs hand over files that lie in no file system.
  if (entries.length === 0) return { files: plain, folderName }
  return { files: (await Promise.all(entries.map(filesIn))).flat(), folderName }
}
