// The site that the journeys visit, with a browser of its own for each file of them.
import { afterAll, beforeAll, inject } from 'vitest'

import { visitWorkbenchSite, type WorkbenchSite } from './workbench-page.ts'

/** Opens pages of the site during the tests of the file that asks. */
export function journeySite(): Pick<WorkbenchSite, 'open'> {
  let site: WorkbenchSite
  beforeAll(async () => {
    site = await visitWorkbenchSite(inject('journeyAddress'))
  })
  afterAll(() => site?.close())
  return { open: (options) => site.open(options) }
}
