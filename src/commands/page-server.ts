// Builds the workbench and serves it from this machine, cross-origin isolated; used by `start`, the journeys and the benches.
import { build, preview } from 'vite'

export interface PageServer {
  readonly address: string
  close(): Promise<void>
}

/** Port asked for first; common practice, no source. */
const firstPort = 4173

/**
 * Builds `dist/` and serves it on `port`, or the next free one.
 * @throws where the build fails
 */
export async function buildAndServePage(port = firstPort): Promise<PageServer> {
  await build({ logLevel: 'warn' })
  const server = await preview({ preview: { port, strictPort: false }, logLevel: 'warn' })
  const address = server.resolvedUrls?.local[0]
  if (!address) throw new Error('The workbench was built, but its server gave no address.')
  return { address, close: () => server.close() }
}
