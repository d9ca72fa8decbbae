// A part that is `like` another takes the blocks in it: those of a motor are its sensors.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { type Block, factOf } from '../../server/src/job/model.ts'

function checked(text: string, library = '') {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('a.wright', openDocument(text), (path) =>
    path === 'parts.wright' ? openDocument(library) : undefined,
  )
  const { findings } = { findings: new Checker(analysis, allChecks).check(file, { today: '2026-06-01' }) }
  const all = (block: Block): readonly Block[] => [block, ...block.children.flatMap(all)]
  const sensors = analysis
    .blocks(file)
    .flatMap(all)
    .filter(({ kind, path }) => kind === 'sensor' && path.split('.').length > 2)
    .map((sensor) => {
      const [kind, trip] = [factOf(sensor, 'sensor.kind'), factOf(sensor, 'sensor.trip')]
      return `${sensor.path} ${kind?.value ?? '-'} ${trip ? Math.round(trip.value - 273.15) : '-'}`
    })
  return { sensors, findings }
}

const winding = 'sensor winding { kind: pt1000  trip: 150 degC }'
const library = `motor stock { power: 15 kW  thermal-class: B  ${winding} }\n`
const ids = ({ findings }: ReturnType<typeof checked>, id: string) =>
  findings.filter(({ check }) => check === id)

describe('a part that is like another', () => {
  it('takes its sensor, from a library and from the same file', () => {
    const from = (text: string, parts?: string) => checked(text, parts).sensors
    const drive = 'drive main { motor m { like: stock } }\n'
    expect(from(`use "parts.wright"\n${drive}`, library)).toEqual(['main.m.winding pt1000 150'])
    expect(from(library + drive)).toEqual(['main.m.winding pt1000 150'])
    expect(from(drive + library)).toEqual(['main.m.winding pt1000 150'])
  })

  it('keeps what its own sensor says, and takes the rest of that', () => {
    expect(
      checked(`${library}drive main { motor m { like: stock  sensor winding { trip: 120 degC } } }`).sensors,
    ).toEqual(['main.m.winding pt1000 120'])
  })

  it('takes along a chain, in any order', () => {
    const chain = 'motor second { like: stock }\nmotor third { like: second }\n'
    const drive = 'drive main { motor m { like: third } }\n'
    for (const text of [library + chain + drive, drive + chain + library, chain + drive + library])
      expect(checked(text).sensors).toEqual(['main.m.winding pt1000 150'])
  })

  it('takes what its drive takes after that', () => {
    const other = 'sensor bearing { kind: pt100 }'
    const { sensors } = checked(
      `${library}drive port { motor m { power: 15 kW  sensor winding { kind: ntc  warning: 100 degC  trip: 110 degC }  ${other} } }
drive starboard { like: port  motor m { like: stock } }\n`,
    )
    expect(sensors.filter((one) => one.startsWith('starboard')).sort()).toEqual([
      'starboard.m.bearing pt100 -',
      'starboard.m.winding pt1000 150',
    ])
    const twin = checked(`${library}drive port { motor m { like: stock } }\ndrive starboard { like: port }\n`)
    expect(twin.sensors).toEqual(['port.m.winding pt1000 150', 'starboard.m.winding pt1000 150'])
  })

  it('may be like what its drive takes from another', () => {
    const { sensors } = checked(
      `drive port { motor spare { ${winding} } }
drive starboard { like: port  motor m { like: spare } }\n`,
    )
    expect(sensors).toContain('starboard.m.winding pt1000 150')
  })

  it('in a circle ends', () => {
    for (const text of [
      'motor a { like: b  sensor s { kind: pt100 } }\nmotor b { like: a }\n',
      'motor a { like: a  sensor s { kind: pt100 } }\n',
      'drive main { motor a { sensor s { kind: pt100 } like: port.b } } drive port { like: main  motor b { like: main.a } }\n',
      'drive main { motor a { like: b  sensor s { kind: pt100 } } motor b { like: a } }\n',
    ])
      expect(ids(checked(text), 'job/refers-to-itself').length).toBeGreaterThan(0)
  })

  it('has its findings at the word after like, with the way to the library', () => {
    const text = `use "parts.wright"\njob "x" { vessel: "y"  status: issued }\ndrive main { motor m { like: stock } }\n`
    const above = ids(checked(text, library), 'sensor/above-class')
    expect(
      above.map(({ at }) => [at.section.text.slice(at.span.start, at.span.end), at.taken?.path]),
    ).toEqual([['stock', 'main.m.winding']])
    expect(above[0]?.at.taken?.from.section.text).toContain('motor stock')
  })

  it('is asked for what the library leaves open', () => {
    const job = (status: string) =>
      `use "parts.wright"\njob "x" { vessel: "y"  status: ${status} }\ndrive main { motor m { like: stock } }\n`
    const open = library.replace('  trip: 150 degC', '')
    const missing = ids(checked(job('issued'), open), 'job/fact-missing')
      .filter(({ at }) => at.taken?.path === 'main.m.winding')
      .map(({ message }) => message)
    expect(missing).toEqual(['main.m.winding: Two facts are still missing: warning, trip.'])
  })
})
