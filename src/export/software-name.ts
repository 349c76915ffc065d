// How files name the program that wrote them.
import { version } from '../../package.json' with { type: 'json' }

export const softwareName = `Rimeleaf ${version}`
