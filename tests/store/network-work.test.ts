// No network is solved again for what has nothing to do with it.
import { describe, expect, it } from 'vitest'
import { edit, openDocument } from '../../server/src/job/document.ts'
import { Session } from './jobs.ts'

const text = `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
drive main {
  motor turning { power: 15 kW  efficiency: 92 %  mass: 60 kg }
  controller { input: 72..120 V  efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse { kind: fuse  rating: 315 A  in: feed  at: 100 mm }
  seal { shaft-size: 35 mm  free-length: 148 mm }
}
`
const network = /flowsOfFile|faultsOfFile|topologyOfFile/

/** What is worked out again once `from` is `to`. */
function workAfter(from: string, to: string): readonly string[] {
  const session = new Session()
  const before = openDocument(text)
  session.findings(session.file(before))
  const at = text.indexOf(from)
  return session
    .worked(session.file(edit(before, at, at + from.length, to)))
    .filter((name) => network.test(name))
}

describe('the network', () => {
  it.each([
    ['length of a cable', 'length: 2.5 m', 'length: 3.5 m'],
    ['rated power', 'power: 15 kW', 'power: 16 kW'],
    ['low end of the window', '84..108', '80..108'],
  ])('is solved again for another %s', (_, from, to) => {
    expect(workAfter(from, to)).toContain('flowsOfFile')
  })

  it.each([
    ['mass of the motor', 'mass: 60 kg', 'mass: 61 kg'],
    ['part elsewhere', 'free-length: 148 mm', 'free-length: 147 mm'],
    ['space', 'length: 2.5 m', 'length:  2.5 m'],
    ['unit of a length', 'length: 2.5 m', 'length: 2500 mm'],
  ])('is kept for another %s', (_, from, to) => {
    expect(workAfter(from, to)).toEqual([])
  })
})
