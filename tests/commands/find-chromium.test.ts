// Where the test settings look for a browser: what the person stated wins, and a wrong statement is said, not passed over.
import { afterEach, expect, it, vi } from 'vitest'
import { findChromium } from '../../src/commands/find-chromium.mjs'

afterEach(() => vi.unstubAllEnvs())

it('takes the stated executable before any other', () => {
  vi.stubEnv('CHROMIUM_PATH', process.execPath)
  expect(findChromium()).toBe(process.execPath)
})

it('says so when the stated executable does not exist', () => {
  vi.stubEnv('CHROMIUM_PATH', '/nowhere/chromium')
  expect(findChromium).toThrow('/nowhere/chromium')
})
