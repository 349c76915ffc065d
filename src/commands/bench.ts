// `npm run bench`: runs tests/bench/*.bench.ts one after another and prints their rows.
// Words after `--` choose files by name; `--json FILE` also writes the rows.
import { readdir, writeFile } from 'node:fs/promises'
import { parseArgs } from 'node:util'
import { answerHelp } from './answer-help.ts'
import { benchLine, type BenchRow, type BenchRows } from './bench-row.ts'

answerHelp(`npm run bench [-- WORDS] [--json FILE]

Measures speed as ratios against a reference in the same run; one line for each.

  WORDS        run only the benches of tests/bench whose file names hold one of these
  --json FILE  also write the rows
  --help       print this`)
const folder = new URL('../../tests/bench/', import.meta.url)
const { values, positionals } = parseArgs({ options: { json: { type: 'string' } }, allowPositionals: true })

const files = (await readdir(folder))
  .filter((name) => name.endsWith('.bench.ts'))
  .filter((name) => positionals.length === 0 || positionals.some((word) => name.includes(word)))
  .sort()
if (files.length === 0) {
  console.error(`No bench is called ${positionals.join(' or ')}: see tests/bench.`)
  process.exit(1)
}

const rows: BenchRow[] = []
for (const file of files) {
  const bench = (await import(new URL(file, folder).href)) as { rows: BenchRows }
  for await (const row of bench.rows()) {
    rows.push(row)
    console.log(benchLine(row))
  }
}
if (values.json) await writeFile(values.json, `${JSON.stringify(rows, null, 2)}\n`)
