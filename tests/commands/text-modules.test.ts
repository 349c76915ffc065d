// Commands under Node read shader text as the page does.
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { say } from '../support/outside-tools.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()
const hook = fileURLToPath(new URL('../../src/commands/text-modules.mjs', import.meta.url))

it('a shader imported as text is the text of the file, quotes and line ends included', () => {
  const shader = 'vec3 half(vec3 rgb) { // "½" \\n `${x}`\n  return rgb * .5;\r\n}\n'
  mkdirSync(join(folder, 'shaders'))
  writeFileSync(join(folder, 'shaders/half.glsl'), shader)
  writeFileSync(
    join(folder, 'read.mjs'),
    "import text from './shaders/half.glsl?raw'\nprocess.stdout.write(JSON.stringify(text))\n",
  )
  const printed = say(process.execPath, ['--import', hook, join(folder, 'read.mjs')])
  expect(JSON.parse(printed)).toBe(shader)
})
