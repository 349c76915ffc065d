// What lies in a folder without being a frame of its own: opening the folder passes it by, while a file that a person names is
// always tried. A JPEG or TIFF is a frame where no raw file bears its name, as cameras and programs lay them beside one another.

/** Endings of sidecars, camera previews, sound, films and papers, in lower case (common practice, no source). */
const companionEndings = new Set(
  [
    'xmp xml json txt log csv md url ini db dat cube icc icm',
    'heic heif hif avif png gif webp bmp psd svg',
    'mov mp4 m4v avi mts m2ts mpg mpeg mkv webm thm lrv wav mp3 m4a aac',
    'pdf html htm doc docx zip gz tar 7z rar',
  ].flatMap((line) => line.split(' ')),
)

/** Endings of photographs that were developed before. */
const developedEndings = new Set(['jpg', 'jpeg', 'jpe', 'tif', 'tiff'])

/** Hidden files begin with a dot, as on most systems; Windows keeps its own under these names. */
const hiddenNames = /^(\.|desktop\.ini$|thumbs\.db$)/i

const endingOf = (fileName: string) => fileName.slice(fileName.lastIndexOf('.') + 1).toLowerCase()
const stemOf = (fileName: string) => fileName.replace(/\.[^.]*$/, '').toLowerCase()

/** Whether a file is never a frame, whatever lies beside it. */
function isCompanion(fileName: string): boolean {
  return hiddenNames.test(fileName) || companionEndings.has(endingOf(fileName))
}

/** The files of a folder that may be frames, by name with numbers counted (frame 2 before frame 10). */
export function framesOfFolder(files: readonly File[]): File[] {
  const candidates = files.filter((file) => !isCompanion(file.name))
  const isDeveloped = (file: File) => developedEndings.has(endingOf(file.name))
  const rawStems = new Set(candidates.filter((file) => !isDeveloped(file)).map((file) => stemOf(file.name)))
  return candidates
    .filter((file) => !isDeveloped(file) || !rawStems.has(stemOf(file.name)))
    .toSorted((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }))
}

/** Says how many files of a folder were passed by, or null where none was. */
export function leftOutSentence(folderName: string, opened: number, leftOut: number): string | null {
  if (leftOut === 0) return opened === 0 ? `The folder ${folderName} is empty: nothing was opened.` : null
  const rest = leftOut === 1 ? '1 file that is no frame of its own' : `${leftOut} files that are no frames of their own`
  if (opened === 0) return `The folder ${folderName} holds only ${rest}: nothing was opened.`
  return `Opened ${opened} from the folder ${folderName} and left out ${rest}.`
}
