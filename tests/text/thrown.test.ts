// What was thrown becomes words; the name of a given-up request is that of the DOM standard (AbortError, WHATWG DOM § 3.1).
import { expect, it } from 'vitest'

import { closed, isGivenUp, wordsOf } from '../../src/text/thrown.ts'

it('words are those of the error, or whatever else was thrown', () => {
  expect(wordsOf(new RangeError('Too far'))).toBe('Too far')
  expect(wordsOf('plain')).toBe('plain')
  expect(wordsOf(undefined)).toBe('undefined')
})

it('a sentence ends in one full stop', () => {
  expect(['It ends', 'It ends.'].map(closed)).toEqual(['It ends.', 'It ends.'])
})

it('only what was given up counts as that', () => {
  const given = new AbortController()
  given.abort()
  expect(isGivenUp(given.signal.reason)).toBe(true)
  expect(isGivenUp(new DOMException('Gone', 'NotFoundError'))).toBe(false)
  expect(isGivenUp(new Error('AbortError'))).toBe(false)
})
