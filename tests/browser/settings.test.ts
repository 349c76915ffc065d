// What the browser remembers for the page, and a browser that remembers nothing.
import { expect, it, onTestFinished, vi } from 'vitest'

import { readSetting, writeSetting } from '../../src/workbench/settings.ts'

it('is there again', () => {
  writeSetting('shade of grey', 'middle')
  expect(readSetting('shade of grey')).toBe('middle')
  expect(readSetting('another')).toBe(null)
})

it('is nothing where site data is blocked, and nothing breaks', () => {
  const blocked = vi.spyOn(window, 'localStorage', 'get').mockImplementation(() => {
    throw new DOMException('The operation is insecure.', 'SecurityError')
  })
  onTestFinished(() => blocked.mockRestore())
  writeSetting('shade of grey', 'dark')
  expect(readSetting('shade of grey')).toBe(null)
})
