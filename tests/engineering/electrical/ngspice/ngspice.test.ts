// The networks of this folder against what ngspice 39.3 says of them; run.ts runs it and keeps its figures.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { faultCurrents, faultFlow } from '../../../../server/src/engineering/electrical/dc-network.ts'
import { near, solved } from '../network-helpers.ts'
import type { Figures } from './figures.ts'
import { networks } from './networks.ts'

const figures = JSON.parse(readFileSync(new URL('figures.json', import.meta.url), 'utf8')) as Record<
  string,
  Figures
>

/** To 1e-9 of the largest of them. */
function agrees(ours: readonly number[], theirs: readonly number[]): void {
  expect(ours).toHaveLength(theirs.length)
  const size = Math.max(...theirs.map(Math.abs))
  for (const [i, value] of theirs.entries()) near(ours[i], value, 1e-9 * size)
}

describe('agrees with ngspice', () => {
  it.each(Object.entries(networks))('%s', (name, { network, fault }) => {
    const theirs = figures[name]
    if (!theirs) throw new Error(`no figures of ${name}: run run.ts --keep`)
    const ours = solved(network)
    agrees(ours.drawVoltages, theirs.drawVoltages)
    agrees(ours.sourceCurrents, theirs.sourceCurrents)
    agrees(ours.linkCurrents, theirs.linkCurrents)
    const flow = faultFlow(network, fault)
    agrees(faultCurrents(network, [fault]), [theirs.fault.current])
    agrees([flow.current], [theirs.fault.current])
    agrees(flow.linkCurrents, theirs.fault.linkCurrents)
    agrees(flow.sourceCurrents, theirs.fault.sourceCurrents)
  })
})
