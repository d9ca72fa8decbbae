// Settings of a controller against what its batteries permit and its fuse carries: a limit holds for any time, and controllers on one bank add up.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'

const cable = (name: string, from: string, to: string) =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: 95 mm2  length: 1 m  insulation: 105 degC  place: open }\n`
const bank = (name: string, facts: string) =>
  `battery ${name} { nominal: 96 V  window: 84..108 V  ${facts} }\n`
const drive = (name: string, controller: string, fuse = '') => `drive ${name} {
  motor m { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { input: 72..120 V  efficiency: 96 %  ${controller} }
  ${cable('feed', 'bus', 'controller')}  ${fuse}
}
`
const oneBus = (banks: readonly string[], ...drives: readonly string[]) =>
  banks.map((facts, i) => bank(`b${i}`, facts) + cable(`lead-${i}`, `b${i}`, 'bus')).join('') +
  `busbar bus { current: 900 A }\n${drives.join('')}`
const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.flatMap(({ check: id, severity, message }) =>
    id === check ? [`${severity}: ${message}`] : [],
  )
const battery = 'controller/limit-beyond-battery'
const fuse = 'controller/limit-beyond-fuse'

describe('the input limit of a controller', () => {
  it.each([
    ['210 A', 'current: 210 A', []],
    ['211 A', '', []],
    [
      '211 A',
      'current: 210 A',
      ['warning: The controller may take 211 A; the battery permits 210 A continuously.'],
    ],
    [
      '420 A',
      'current: 210 A  peak-current: 420 A',
      ['warning: The controller may take 420 A; the battery permits 210 A continuously.'],
    ],
    [
      '421 A',
      'current: 210 A  peak-current: 420 A',
      ['error: The controller may take 421 A; the battery permits 420 A at its peak.'],
    ],
  ])('of %s, battery %j', (limit, facts, messages) => {
    expect(found(oneBus([facts], drive('port', `input-current-limit: ${limit}`)), battery)).toEqual(messages)
  })

  const twin = (limit: string, ...banks: readonly string[]) =>
    oneBus(
      banks,
      drive('port', `input-current-limit: ${limit}`),
      drive('starboard', `input-current-limit: ${limit}`),
    )

  it('adds up with that of others on the same batteries, in one finding', () => {
    expect(found(twin('150 A', 'current: 210 A'), battery)).toEqual([
      'warning: The 2 controllers together may take 300 A; the battery permits 210 A continuously.',
    ])
    expect(found(twin('150 A', 'current: 210 A', 'current: 90 A'), battery)).toEqual([])
  })

  it('is not judged where one of the batteries does not state its current', () => {
    expect(found(twin('150 A', 'current: 210 A', ''), battery)).toEqual([])
  })

  it('is not added to one on another bank', () => {
    const other = `${bank('c', 'current: 150 A') + cable('lead-c', 'c', 'bus-2')}busbar bus-2 { current: 900 A }\n`
    const second = drive('starboard', 'input-current-limit: 150 A').replace('from: bus', 'from: bus-2')
    expect(
      found(oneBus(['current: 150 A'], drive('port', 'input-current-limit: 150 A'), other, second), battery),
    ).toEqual([])
  })

  it('is that of the weakest battery of a string', () => {
    const text = `${bank('a', 'current: 210 A')}${bank('b', 'current: 100 A')}cable link { from: a  to: b  pole: series  conductor: 95 mm2  length: 0.3 m  insulation: 105 degC }
${cable('lead', 'a', 'bus')}busbar bus { current: 900 A }\n${drive('port', 'input-current-limit: 150 A')}`
    expect(found(text, battery)).toHaveLength(1)
  })

  it('never lowers the current that a cable is sized for', () => {
    const feed = (text: string) =>
      resultsIn(text).results.find(
        ({ figure, block }) => figure.id === 'cable/current' && block.name === 'feed',
      )?.amount?.value
    expect(feed(oneBus([''], drive('port', 'input-current-limit: 20 A')))).toBe(
      feed(oneBus([''], drive('port', ''))),
    )
  })
})

describe('the charge limit of a controller', () => {
  it.each([
    ['100 A', 0],
    ['0 A', 0],
    ['101 A', 1],
  ])('of %s beside a battery for 100 A', (limit, count) => {
    const text = oneBus(['charge-current: 100 A'], drive('port', `charge-limit: ${limit}`))
    expect(found(text, battery)).toHaveLength(count)
  })
})

describe('a limit and the fuse before the controller', () => {
  const inFeed = 'protection f { kind: fuse  rating: 300 A  in: feed  at: 100 mm'
  it.each([
    ['300 A', `${inFeed} }`, 0],
    ['301 A', `${inFeed} }`, 1],
    // 0.5 % less for each kelvin above 40 °C: 270 A.
    ['270 A', `${inFeed}  ambient: 60 degC }`, 0],
    ['271 A', `${inFeed}  ambient: 60 degC }`, 1],
    ['301 A', '', 0],
  ])('%s, %j', (limit, protection, count) => {
    expect(
      found(oneBus([''], drive('port', `input-current-limit: ${limit}`, protection)), fuse),
    ).toHaveLength(count)
  })

  it('counts the smallest of several in the cable, and one that the cable ends at', () => {
    const second = 'protection g { kind: fuse  rating: 250 A  in: feed  at: 500 mm }'
    expect(
      found(oneBus([''], drive('port', 'input-current-limit: 260 A', `${inFeed} }\n${second}`)), fuse),
    ).toEqual(['warning: The controller may take 260 A; the fuse before it carries 250 A.'])
    const atEnd = oneBus([''], drive('port', 'input-current-limit: 260 A')).replace(
      /cable feed .*/,
      `protection g { kind: fuse  rating: 250 A  from: bus }\n${cable('feed', 'g', 'controller')}`,
    )
    expect(found(atEnd, fuse)).toHaveLength(1)
  })
})
