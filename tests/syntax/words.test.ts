// What an editor takes for a word when one is chosen by double click, and replaces when one is completed.
import { describe, expect, it } from 'vitest'
import configuration from '../../syntaxes/language-configuration.json' with { type: 'json' }

const { pattern, flags } = configuration.wordPattern
const wordsOf = (text: string) => text.match(new RegExp(pattern, `${flags}g`))

describe('words to an editor', () => {
  it.each([
    ['bore: .5 in', ['bore', '.5', 'in']],
    ['window: 84..108 V', ['window', '84', '108', 'V']],
    ['window: .5...75 in', ['window', '.5', '75', 'in']],
    ['length: 1.25 m', ['length', '1.25', 'm']],
    ['aft-stbd: up 2 flats', ['aft-stbd', 'up', '2', 'flats']],
    ['like: stock.shaft', ['like', 'stock', 'shaft']],
    ['torque: 45 N·m', ['torque', '45', 'N·m']],
  ])('%s', (text, words) => {
    expect(wordsOf(text)).toEqual(words)
  })
})
