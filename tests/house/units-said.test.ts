// A figure and its unit are put together in the quantity floor alone, so that no factor slips in between (common practice, no source).
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const source = new URL('../../server/src/', import.meta.url)
const above = ['areas/', 'checks/', 'editor/', 'cli/']
const files = above.flatMap((floor) =>
  readdirSync(new URL(floor, source), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => floor + file),
)

/** What is filled into a text and has a unit written behind it. */
const unitByHand = /\}\s?(?:mm|mrad|rad|deg|rpm|kW|mohm|ohm|N·m|degC|Ah|[AVW%])(?![\w²2])/g
const inchByHand = /\/ ?(?:0\.0254|25\.4)\b|\* ?39\.37/g

describe('a unit', () => {
  it.each(files)('is not written behind a figure by hand in %s', (file) => {
    const text = readFileSync(new URL(file, source), 'utf8')
    expect(text.match(unitByHand) ?? []).toEqual([])
    expect(text.match(inchByHand) ?? []).toEqual([])
  })

  it('would be found', () => {
    expect('formatNumber(x)} mm on'.match(unitByHand)).toEqual(['} mm'])
    expect('share} % of'.match(unitByHand)).toEqual(['} %'])
    expect('many} in parallel'.match(unitByHand)).toBeNull()
    expect('si / 0.0254'.match(inchByHand)).toEqual(['/ 0.0254'])
  })
})
