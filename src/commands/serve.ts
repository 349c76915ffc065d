// `npm start`: builds the workbench, serves it and says where. `-- --port N` asks for another port.
import { parseArgs } from 'node:util'
import { buildAndServePage } from './page-server.ts'

const { values } = parseArgs({ options: { port: { type: 'string' } } })
const port = values.port === undefined ? undefined : Number(values.port)
if (port !== undefined && !(Number.isInteger(port) && port > 0 && port < 65536)) {
  console.error(`--port takes a number from 1 to 65535; "${values.port}" is none.`)
  process.exit(1)
}

const { address } = await buildAndServePage(port)
console.log(`\nRimeleaf is at ${address}\nIt stays there until this command is ended (Ctrl+C).`)
