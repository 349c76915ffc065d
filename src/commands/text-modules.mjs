// Lets Node import shader text as the bundler does (`import glsl from './x.glsl?raw'`), so that commands and the page
// share every module. Loaded with `--import`; the same file is then loaded again on the hooks thread, where its
// exports are the hooks.
import { readFile } from 'node:fs/promises'
import { register } from 'node:module'
import { isMainThread } from 'node:worker_threads'

const mark = '?raw'

/** @type {import('node:module').ResolveHook} */
export async function resolve(specifier, context, next) {
  if (!specifier.endsWith(mark)) return next(specifier, context)
  return { url: new URL(specifier, context.parentURL).href, format: 'module', shortCircuit: true }
}

/** @type {import('node:module').LoadHook} */
export async function load(url, context, next) {
  if (!url.endsWith(mark)) return next(url, context)
  const text = await readFile(new URL(url.slice(0, -mark.length)), 'utf8')
  return { format: 'module', source: `export default ${JSON.stringify(text)}`, shortCircuit: true }
}

/** For threads, which do not inherit hooks. */
export const registerTextModules = () => register(import.meta.url)

if (isMainThread) registerTextModules()
