// `network`: the parts in the order of the way, with currents that obey Kirchhoff at each of them.
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { type NetworkJson, networkSchema } from '../../server/src/areas/electrical/commands/network-schema.ts'
import { folder, put, shaftwright } from './run-cli.ts'

const demo = 'docs/examples/twin-launch-one-bus.wright'

const jsonOf = (file: string): NetworkJson => {
  const run = shaftwright(['network', file, '--format', 'json'])
  expect(run.code).toBe(0)
  return networkSchema.parse(JSON.parse(run.out))
}

describe('network', () => {
  it('shows every cable, switch and battery of the demo, each behind the one it is reached by', () => {
    const { networks, cases } = jsonOf(demo)
    const [network] = networks
    if (!network) throw new Error('no network')
    const { parts } = network
    expect(parts[0]?.kind).toBe('battery')
    for (const [i, { before }] of parts.entries()) if (i > 0) expect(before).toBeLessThan(i)
    const blocks = new Set(parts.map(({ block }) => block))
    for (const block of [
      'string-a',
      'string-b',
      'bus',
      'shore',
      'house',
      'port.feed',
      'starboard.controller',
    ])
      expect(blocks).toContain(block)
    expect(cases).toContain('charging, nothing else on')
  })

  // Kirchhoff's current law. Both strings are alike, so what each gives is half of what leaves the bus.
  it('has at the bus what comes in as what goes out, in every case', () => {
    const { networks, cases } = jsonOf(demo)
    const parts = networks[0]?.parts ?? []
    const bus = parts.findIndex(({ block }) => block === 'bus')
    for (const i of cases.keys()) {
      const amps = (block: string) =>
        Math.abs(
          parts.find((one) => one.block === block)?.cases.find((one) => one.case === i)?.current_A ?? 0,
        )
      const branches = parts.flatMap(({ before, block }) => (before === bus ? [block] : []))
      expect(branches.length).toBeGreaterThan(3)
      const charged = amps('charge')
      const taken = branches.reduce((sum, block) => sum + amps(block), 0) - charged
      expect(amps('main-isolator')).toBeCloseTo(Math.abs(taken - charged), 2)
      expect(amps('string-a') + amps('string-b')).toBeCloseTo(Math.abs(taken - charged), 2)
    }
  })

  it('says where a ring closes', () => {
    const ring = `battery b { nominal: 48 V  window: 44..56 V }
busbar p { }
busbar q { }
load l { power: 1 kW }
cable a { from: b  to: p  conductor: 50 mm2  length: 1 m }
cable c { from: b  to: q  conductor: 50 mm2  length: 2 m }
cable d { from: p  to: q  conductor: 50 mm2  length: 1 m }
cable e { from: q  to: l  conductor: 50 mm2  length: 1 m }
`
    const at = path.join(folder, put('ring.wright', ring))
    const { networks } = jsonOf(at)
    const parts = networks[0]?.parts ?? []
    const closing = parts.flatMap(({ block, closesAt }) =>
      closesAt === null ? [] : [block, parts[closesAt]?.block],
    )
    expect(parts.filter(({ kind }) => kind === 'cable')).toHaveLength(4)
    expect(closing).toHaveLength(2)
    expect(shaftwright(['network', at]).out).toContain(`ends at ${closing[1]} again`)
    // Two ways of 2 m each share the load alike.
    const amps = (name: string) =>
      parts.find(({ block }) => block === name)?.cases[0]?.current_A ?? Number.NaN
    expect(amps('a')).toBeCloseTo(amps('c'), 3)
    expect(amps('a') + amps('c')).toBeCloseTo(amps('e'), 3)
  })

  it('ends with 1 where there is no network, and with 2 where there is nothing', () => {
    put('none.wright', 'battery b { nominal: 48 V }\n')
    put('empty.wright', '')
    expect(shaftwright(['network', 'none.wright'], folder)).toMatchObject({ code: 1 })
    expect(shaftwright(['network', 'none.wright'], folder).out).toContain('No network')
    expect(shaftwright(['network', 'empty.wright'], folder).code).toBe(2)
  })
})
