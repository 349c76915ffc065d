// Brings node_modules in step with package-lock.json; with --browser also finds or installs a Chromium for the tests.
// Plain Node without packages, because it runs on a fresh clone, before every other command.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { findChromium } from './find-chromium.mjs'

const leastNode = [20, 19]

/** @typedef {{ version?: string, optional?: boolean, devOptional?: boolean, peer?: boolean }} LockedPackage */

/** @param {string} path @returns {Record<string, LockedPackage>} packages by folder, without the project itself */
function readLock(path) {
  if (!existsSync(path)) return {}
  const { '': _project, ...packages } = JSON.parse(readFileSync(path, 'utf8')).packages
  return packages
}

/** @param {string} sentence @returns {never} */
function fail(sentence) {
  console.error(sentence)
  process.exit(1)
}

/** @param {string} command @param {string[]} words @returns {boolean} whether it ended well */
function run(command, words) {
  return spawnSync(command, words, { stdio: 'inherit', shell: process.platform === 'win32' }).status === 0
}

function installPackages() {
  const wanted = readLock('package-lock.json')
  const installed = readLock('node_modules/.package-lock.json')
  const outOfStep = Object.entries(wanted).filter(
    ([folder, locked]) => !locked.optional && installed[folder]?.version !== locked.version,
  )
  if (outOfStep.length === 0) return
  console.log(`Installing ${outOfStep.length} packages that are missing or out of step.`)
  if (!run('npm', ['ci', '--no-audit', '--no-fund']))
    fail('The packages could not be installed: npm says why above. Rimeleaf needs a package registry once.')
}

function installChromium() {
  if (findChromium()) return
  const mayInstall = process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')
  if (mayInstall) {
    console.log('Installing Chromium for the browser tests with apt-get.')
    run('apt-get', ['update', '-q'])
    run('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium'])
  }
  if (!findChromium())
    fail(
      'No Chromium was found for the browser tests. Install one from your system, or set CHROMIUM_PATH to its ' +
        'executable. Without it, "npx vitest run --project node" runs the tests that need no browser.',
    )
}

const [major, minor] = process.versions.node.split('.').map(Number)
if (major < leastNode[0] || (major === leastNode[0] && minor < leastNode[1]))
  fail(`Rimeleaf needs Node ${leastNode.join('.')} or later; this is ${process.versions.node}.`)
installPackages()
if (process.argv.includes('--browser')) installChromium()
