// Finds a Chromium for tests and benches. Plain Node, because the test settings and the set-up command both need it
// before anything else can run; the test tool's own download fails on closed networks, so it comes last.
import { existsSync } from 'node:fs'
import { createRequire } from 'node:module'

const systemPaths = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/** @returns {string | undefined} the executable the test tool downloaded for itself, if it did */
function downloadedByTestTool() {
  try {
    return createRequire(import.meta.url)('playwright-core').chromium.executablePath()
  } catch {
    return undefined
  }
}

/**
 * Path of a Chromium: `CHROMIUM_PATH`, then the places systems install it to, then the test tool's own.
 * @returns {string | undefined} undefined where there is none
 * @throws {Error} where `CHROMIUM_PATH` names a file that does not exist
 */
export function findChromium() {
  const stated = process.env.CHROMIUM_PATH
  if (stated && !existsSync(stated)) throw new Error(`CHROMIUM_PATH names ${stated}, which does not exist.`)
  return [stated, ...systemPaths, downloadedByTestTool()].find((path) => path && existsSync(path))
}

/** Arguments for a Chromium under test: WebGL on the processor, and no traffic of the browser's own. */
export const chromiumArguments = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
]
