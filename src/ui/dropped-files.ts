// Files dropped on the page, with everything inside dropped folders.

interface Found {
  readonly files: File[]
  /** Names of files and folders that could not be read. */
  readonly unreadable: string[]
}

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

/** Files in an entry; those that the browser may not read are named. */
async function filesIn(entry: FileSystemEntry): Promise<Found> {
  try {
    if (entry.isFile) {
      const file = await new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject))
      return { files: [file], unreadable: [] }
    }
    return joined(await Promise.all((await entriesIn(entry as FileSystemDirectoryEntry)).map(filesIn)))
  } catch {
    return { files: [], unreadable: [entry.name] }
  }
}

function joined(found: readonly Found[]): Found {
  return { files: found.flatMap(({ files }) => files), unreadable: found.flatMap(({ unreadable }) => unreadable) }
}

interface Drop extends Found {
  /** Name of the first dropped folder; undefined where files alone were dropped. */
  readonly folderName: string | undefined
}

/** All files of a drop. Must be called while the event is being handled: afterwards the browser takes its content back. */
export async function droppedFiles(transfer: DataTransfer): Promise<Drop> {
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry()).filter((entry) => entry !== null)
  const plain = [...transfer.files]
  const folderName = entries.find((entry) => entry.isDirectory)?.name
  // Some programs hand over files that lie in no file system.
  if (entries.length === 0) return { files: plain, unreadable: [], folderName }
  return { ...joined(await Promise.all(entries.map(filesIn))), folderName }
}
