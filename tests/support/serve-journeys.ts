// Builds and serves the page once for all journeys.
import type { TestProject } from 'vitest/node'

import { buildAndServePage } from '../../src/commands/page-server.ts'

declare module 'vitest' {
  export interface ProvidedContext {
    readonly journeyAddress: string
  }
}

export default async function serveJourneys(project: TestProject): Promise<() => Promise<void>> {
  const server = await buildAndServePage()
  project.provide('journeyAddress', server.address)
  return server.close
}
