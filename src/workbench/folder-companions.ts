// What lies beside raw files in a folder without being one: opening a folder passes it by, while a file that a person
// names on its own is always tried.

/** Endings of sidecars, camera previews, sound, films and papers, in lower case (common practice, no source). */
const companionEndings = new Set(
  [
    'xmp xml json txt log csv md url ini db dat cube icc icm',
    'jpg jpeg jpe heic heif hif avif png gif webp bmp psd svg',
    'mov mp4 m4v avi mts m2ts mpg mpeg mkv webm thm lrv wav mp3 m4a aac',
    'pdf html htm doc docx zip gz tar 7z rar',
  ].flatMap((line) => line.split(' ')),
)

/** Hidden files begin with a dot, as on most systems; Windows keeps its own under these names. */
const hiddenNames = /^(\.|desktop\.ini$|thumbs\.db$)/i

/** Whether a folder is opened without this file. */
export function isCompanion(fileName: string): boolean {
  const ending = fileName.slice(fileName.lastIndexOf('.') + 1).toLowerCase()
  return hiddenNames.test(fileName) || companionEndings.has(ending)
}

/** The files of a folder that may be frames, by name with numbers counted (frame 2 before frame 10). */
export function framesOfFolder(files: readonly File[]): File[] {
  return files
    .filter((file) => !isCompanion(file.name))
    .toSorted((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }))
}

/** Says how many files of a folder were passed by, or null where none was. */
export function leftOutSentence(folderName: string, opened: number, leftOut: number): string | null {
  if (leftOut === 0) return opened === 0 ? `The folder ${folderName} is empty: nothing was opened.` : null
  const rest = leftOut === 1 ? '1 file that is no raw file' : `${leftOut} files that are no raw files`
  if (opened === 0) return `The folder ${folderName} holds only ${rest}: nothing was opened.`
  return `Opened ${opened} from the folder ${folderName} and left out ${rest}.`
}
