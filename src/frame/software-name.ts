// How files name the program that wrote them.
import { version } from '../../package.json' with { type: 'json' }

const program = 'Rimeleaf'
export const softwareName = `${program} ${version}`

/** Whether a file names this program, in any version, as the one that wrote it. */
export const isOwnSoftware = (name: string | undefined) => name?.startsWith(`${program} `) ?? false
