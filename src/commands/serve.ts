// `npm start`: builds the workbench, serves it and says where. `-- --port N` asks for another port.
import { parseArgs } from 'node:util'
import { answerHelp } from './answer-help.ts'
import { buildAndServePage } from './page-server.ts'

answerHelp(`npm start [-- --port N]

Builds the workbench, serves it on this machine and prints its address.

  --port N   port to ask for (4173); the next free one is taken where it is in use
  --help     print this`)
const { values } = parseArgs({ options: { port: { type: 'string' } } })
const port = values.port === undefined ? undefined : Number(values.port)
if (port !== undefined && !(Number.isInteger(port) && port > 0 && port < 65536)) {
  console.error(`--port takes a number from 1 to 65535; "${values.port}" is none.`)
  process.exit(1)
}

const { address } = await buildAndServePage(port)
console.log(`\nRimeleaf is at ${address}\nIt stays there until this command is ended (Ctrl+C).`)
