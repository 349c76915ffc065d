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

/** All files of a drop, in the order of their paths. Entries must be asked for while the event is being handled. */
export async function droppedFiles(transfer: DataTransfer): Promise<File[]> {
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null)
  return (await Promise.all(entries.map(filesIn))).flat()
}
