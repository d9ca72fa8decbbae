import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { obeysLaws } from './laws.ts'
import { findingsOf } from './marks.ts'
import { acceptances, applied, fixed, offersOf } from './offers.ts'

/** Checks whose example is past mending by the text alone; their offers are tested by themselves. */
const withoutOffer = new Set([
  'job/unit-wrong-kind', // `3 kg` for a length is no slip of a unit
  'job/value-outside', // a length of 0 is no slip that shows what was meant
  'cable/voltage-drop', // 40 m of any section that the tables have loses too much
])

describe('the laws of fixes, over the example of each check that has some', () => {
  const withFixes = allChecks.filter((c) => c.fixes)
  it.each(withFixes.map((c) => [c.id, c] as const))('%s', (_id, c) => {
    const offers = obeysLaws(c.fires, c)
    if (!withoutOffer.has(c.id)) expect(offers.length).toBeGreaterThan(0)
  })
})

describe('accepting a finding with a concession', () => {
  const concedable = allChecks.filter((c) => !c.id.startsWith('job/') && c.severity !== 'information')
  it.each(concedable.map((c) => [c.id, c] as const))('%s', (_id, c) => {
    const offers = obeysLaws(c.fires, c, acceptances)
    expect(offers.length).toBeGreaterThan(0)
    expect(offers.some(({ fix }) => fix.preferred || fix.safe)).toBe(false)
  })

  const text = 'drive main {\n  shaft { diameter: 35 mm }\n  seal { shaft-size: 32 mm }\n}\n'
  const check = 'seal/shaft-size-differs'
  const accepted = () => {
    const { offers } = offersOf(text, check, acceptances)
    return offers.map(({ document, fix }) => applied(document, fix)).join()
  }

  it('writes who, why and until when as blanks, after a blank line', () => {
    expect(accepted()).toBe(
      `${text}\nconcession ${check} {\n  on:         main.seal\n  reason:     ?\n  granted-by: ?\n  until:      ?\n}\n`,
    )
  })

  it('silences nothing until they are filled in', () => {
    const found = (of: string) => findingsOf(of, allChecks).findings.filter((f) => f.check === check)
    expect(found(accepted())[0]?.severity).toBe('error')
    const filled = accepted()
      .replace('reason:     ?', 'reason: "maker asked"')
      .replace('granted-by: ?', 'granted-by: "design office"')
      .replace('until:      ?', 'until: 2026-04-15')
    expect(found(filled)[0]?.severity).toBe('information')
  })

  it('is not offered for what is wrong with the text', () => {
    expect(offersOf('seal { free-length: 148 }\n', 'job/unit-missing', acceptances).offers).toEqual([])
  })
})

const laws = (text: string, id: string) => {
  const found = allChecks.find((c) => c.id === id)
  if (!found) throw new Error(`no check ${id}`)
  return obeysLaws(text, found).map(({ fix }) => fix.title)
}

describe('a unit', () => {
  it('that is missing is offered as the fact is usually written, then in the other system', () => {
    expect(
      laws('drive main {\n  seal { compression: 26 mm  free-length: 148 }\n}\n', 'job/unit-missing'),
    ).toEqual(['Write 148 mm'])
    // 12 in of cable is a jumper: possible, so it is offered; 400 A in mm2 alone, as no cable has 35 in2 (from memory).
    const cable = (facts: string) => `drive main {\n  cable feed { ${facts} }\n}\n`
    expect(laws(cable('length: 12'), 'job/unit-missing')).toEqual([
      'Write 12 m',
      'Write 12 mm',
      'Write 12 in',
    ])
    expect(laws(cable('conductor: 35'), 'job/unit-missing')).toEqual(['Write 35 mm2'])
  })

  it('is preferred only where no other fits: the unit of a figure is not made up', () => {
    const preferred = (text: string) =>
      offersOf(text, 'job/unit-missing').offers.map(({ fix }) => fix.preferred ?? false)
    expect(preferred('drive main {\n  cable feed { conductor: 35 }\n}\n')).toEqual([true])
    expect(preferred('drive main {\n  cable feed { length: 12 }\n}\n')).toEqual([false, false, false])
  })

  it('that is missing is said as it is offered first', () => {
    const text = 'drive main {\n  cable feed { length: 1.8 }\n}\n'
    const [first] = offersOf(text, 'job/unit-missing').offers
    expect([first?.fix.title, first?.finding.todo]).toEqual(['Write 1.8 m', 'Write the unit, such as 1.8 m.'])
  })

  it('of a move may be a turn of the nut or a length where it is up or down, and a length where it is sideways', () => {
    const move = (by: string) => `drive main {\n  move after dry-1 { done: 2026-03-04  aft-port: ${by} }\n}\n`
    const of = (by: string) => laws(move(by), 'job/unit-missing')
    expect(of('up 1')).toEqual(['Write 1 turn', 'Write 1 flat', 'Write 1 mm', 'Write 1 in'])
    expect(of('down 3')).toEqual(['Write 3 turns', 'Write 3 flats', 'Write 3 mm', 'Write 3 in'])
    expect(of('port 1')).toEqual(['Write 1 mm', 'Write 1 in'])
    expect(of('up 1 turn 2')).toEqual(['Write 2 turns', 'Write 2 flats'])
    expect(offersOf(move('up 1'), 'job/unit-missing').offers.some(({ fix }) => fix.preferred)).toBe(false)
  })

  it('of a temperature without its degree is offered with it', () => {
    const cable = (insulation: string) => `drive main {\n  cable feed { insulation: ${insulation} }\n}\n`
    expect(laws(cable('105 C'), 'job/unit-wrong-kind')).toEqual(['Write 105 degC'])
    expect(laws(cable('221 F'), 'job/unit-wrong-kind')).toEqual(['Write 221 degF'])
  })

  // Electrical frequency = pole pairs × turns a second, and an induction motor slips (common practice, no source).
  it('of a frequency is not made a speed: pole pairs stand between the two', () => {
    const motor = 'drive main {\n  motor main { power: 15 kW  speed: 25 Hz }\n}\n'
    expect(laws(motor, 'job/unit-wrong-kind')).toEqual([])
    expect(
      findingsOf(motor, allChecks)
        .findings.map(({ todo }) => todo)
        .join(),
    ).toContain('pole pairs')
  })

  it('written out, in one or many, in British or American spelling, is offered as its sign', () => {
    const battery = (nominal: string) => `battery house { nominal: ${nominal}  window: 84..108 V }\n`
    expect(laws(battery('96 volts'), 'job/unit-unknown')).toEqual(['Write V'])
    expect(fixed(battery('96 volts'), 'job/unit-unknown', 'Write V')).toBe(battery('96 V'))
    const seal = (length: string) =>
      `drive main {\n  seal { compression: 26 mm  free-length: ${length} }\n}\n`
    for (const unit of ['millimetres', 'millimeter'])
      expect(laws(seal(`148 ${unit}`), 'job/unit-unknown')).toEqual(['Write mm'])
    expect(laws('drive main {\n  motor main { power: 15 kilowatts }\n}\n', 'job/unit-unknown')).toEqual([
      'Write kW',
    ])
  })

  // m is milli, M mega (SI Brochure, 9th edition, table 7).
  it('of another case is never fixed without asking, and not offered where the fact does not allow the value', () => {
    const motor = (power: string) => `drive main {\n  motor main { power: ${power} }\n}\n`
    expect(laws(motor('15 mW'), 'job/unit-unknown')).toEqual([])
    expect(laws(motor('15 KW'), 'job/unit-unknown')).toEqual(['Write kW'])
    expect(offersOf(motor('15 KW'), 'job/unit-unknown').offers.some(({ fix }) => fix.safe)).toBe(false)
  })

  it('of another kind than is wanted there is not offered, but in an arithmetic', () => {
    const motor = (power: string) => `drive main {\n  motor main { power: ${power} }\n}\n`
    expect(laws(motor('15 kgs'), 'job/unit-unknown')).toEqual([])
    expect(laws(motor('96 volts * 160 A'), 'job/unit-unknown')).toEqual(['Write V'])
    const reading = (place: string) =>
      `drive main {\n  reading dry-1 { taken: 2026-03-04  gauge: 0.02 mm  gaps: ${place} 1.8 mm }\n}\n`
    expect(laws(reading('30 degs'), 'job/unit-unknown')).toEqual(['Write deg'])
  })

  it('of a share is per cent where the number is above one', () => {
    const motor = (efficiency: string) =>
      `drive main {\n  motor main { power: 15 kW  efficiency: ${efficiency} }\n}\n`
    expect(laws(motor('96'), 'job/value-outside')).toEqual(['Write 96 %'])
    expect(fixed(motor('96'), 'job/value-outside', 'Write 96 %')).toBe(motor('96 %'))
    expect(laws(motor('0.96 %'), 'job/value-outside')).toEqual(['Write 0.96'])
    for (const not of ['0', '0.001', '0.001 %', '120', '120 %', '-5'])
      expect(laws(motor(not), 'job/value-outside')).toEqual([])
    // A count of conductors is no share.
    expect(laws('drive main {\n  cable feed { parallel: 5000 }\n}\n', 'job/value-outside')).toEqual([])
  })

  it('of another kind is offered only when the number can be meant', () => {
    const cable = (conductor: string) => `drive main {\n  cable feed { conductor: ${conductor} }\n}\n`
    expect(laws(cable('35 mm'), 'job/unit-wrong-kind')).toEqual(['Write 35 mm2'])
    expect(laws(cable('35000 mm'), 'job/unit-wrong-kind')).toEqual([])
    expect(laws(cable('3 kg'), 'job/unit-wrong-kind')).toEqual([])
  })
})

describe('a merge conflict', () => {
  const seal = (lines: string) => `seal {\n${lines}  compression: 26 mm\n}\n`
  // Git's own marks (git-merge, "How conflicts are presented"), the second with what both began from.
  it.each([
    '<<<<<<< ours\n  free-length: 148 mm\n=======\n  free-length: 184 mm\n>>>>>>> theirs\n',
    '<<<<<<< ours\n  free-length: 148 mm\n||||||| base\n  free-length: 140 mm\n=======\n  free-length: 184 mm\n>>>>>>> theirs\n',
  ])('is settled for the one or the other: %j', (lines) => {
    const [first, second] = ['Keep the first version', 'Keep the second version']
    expect(laws(seal(lines), 'job/merge-conflict')).toEqual([first, second])
    expect(fixed(seal(lines), 'job/merge-conflict', first ?? '')).toBe(seal('  free-length: 148 mm\n'))
    expect(fixed(seal(lines), 'job/merge-conflict', second ?? '')).toBe(seal('  free-length: 184 mm\n'))
  })

  it('leaves no gap where the version that is kept has no lines', () => {
    const lines = '<<<<<<< ours\n  free-length: 148 mm\n=======\n>>>>>>> theirs\n'
    expect(fixed(seal(lines), 'job/merge-conflict', 'Keep the second version')).toBe(seal(''))
  })
})

describe('limits in the wrong order', () => {
  it('are turned round', () => {
    const text = 'battery house { nominal: 96 V  window: 108..84 V }\n'
    expect(laws(text, 'job/value-not-allowed')).toEqual(['Write 84..108 V'])
    expect(fixed(text, 'job/value-not-allowed', 'Write 84..108 V')).toBe(
      'battery house { nominal: 96 V  window: 84..108 V }\n',
    )
  })
})

describe('a sign that touches its number', () => {
  it('is offered as limits only where the fact can have them', () => {
    const shaft = 'drive main {\n  shaft { diameter: 35 mm +3 mm }\n}\n'
    expect(laws(shaft, 'job/sign-touches')).toEqual(['Write + 3 mm', 'Write +3/-0 mm'])
    const seal = 'drive main {\n  seal { compression: 26 mm  free-length: 148 mm +3 mm }\n}\n'
    expect(laws(seal, 'job/sign-touches')).toEqual(['Write + 3 mm'])
  })

  it('is no pair of limits where it is a fraction of an inch', () => {
    const shaft = (by: string) => `drive main {\n  shaft { diameter: 2 in ${by} }\n}\n`
    expect(laws(shaft('+3/16 in'), 'job/sign-touches')).toEqual(['Write + 3/16 in'])
    expect(laws(shaft('+0.003/0.001 in'), 'job/sign-touches')).toEqual(['Write +0.003/-0.001 in'])
  })
})

describe('a fact said twice', () => {
  it('goes unasked when both say the same', () => {
    const text =
      'drive main {\n  seal {\n    free-length: 148 mm\n    free-length: 148 mm\n    compression: 26 mm\n  }\n}\n'
    expect(laws(text, 'job/duplicate')).toEqual(['Delete the second one'])
    expect(offersOf(text, 'job/duplicate').offers[0]?.fix.safe).toBe(true)
    expect(fixed(text, 'job/duplicate', 'Delete the second one')).toBe(
      'drive main {\n  seal {\n    free-length: 148 mm\n    compression: 26 mm\n  }\n}\n',
    )
  })

  it('leaves no gap where it stood, in a line that keeps its own spaces', () => {
    const text = 'seal {free-length: 148 mm   free-length: 148 mm}\n'
    expect(fixed(text, 'job/duplicate', 'Delete the second one')).toBe('seal {free-length: 148 mm}\n')
  })

  it('is for the person to choose when they differ', () => {
    const text = 'drive main {\n  seal { free-length: 148 mm  free-length: 150 mm  compression: 26 mm }\n}\n'
    expect(laws(text, 'job/duplicate')).toEqual(['Keep the first, 148 mm', 'Keep the second, 150 mm'])
    expect(offersOf(text, 'job/duplicate').offers.some(({ fix }) => fix.safe || fix.preferred)).toBe(false)
  })
})

describe('a misspelt word', () => {
  const found = (text: string) =>
    findingsOf(text, allChecks)
      .findings.map(({ check }) => check)
      .filter((check) => check !== 'job/job-missing')
  const draft = 'drive main { }\njob "x" {\n  status: draft\n'

  it.each([`${draft}  vesel: "y" }\n`, `${draft}  vesel: "y"\n}\n`])(
    'that is a required fact is not missing too: %j',
    (text) => {
      expect(found(text)).toEqual(['job/fact-unknown'])
      expect(laws(text, 'job/fact-unknown')).toEqual(['Write vessel'])
    },
  )

  it('that is a required block is not missing too', () => {
    const text =
      'drive main {\n  bed {\n    adjuster: shims\n    fot aft { from-coupling: 180 mm  across: 0 mm }\n  }\n}\n'
    expect(found(text)).toContain('job/block-unknown')
    expect(found(text)).not.toContain('job/block-missing')
  })

  it('for `like` leaves nothing missing: what the block is like is not known', () => {
    const text = 'motor stock { power: 15 kW }\ndrive main {\n  motor main { lik: stock }\n}\n'
    expect(found(text)).toEqual(['job/fact-unknown'])
    expect(laws(text, 'job/fact-unknown')).toEqual(['Write like'])
  })

  it('is no silence: nothing is assumed in its place', () => {
    const cable = (fact: string) =>
      `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  ${fact}: 92 % }
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 25 mm2  length: 2.5 m  insulation: 105 degC }
}
`
    expect(found(cable('efficiency'))).toContain('cable/undersized')
    expect(found(cable('efficency'))).not.toContain('cable/undersized')
  })

  it('does not take the place of the right one where both stand', () => {
    const text = `${draft}  vesel: "y"\n  vessel: "z"\n}\n`
    expect(found(text)).toEqual(['job/fact-unknown'])
  })

  const seal = (path: string) =>
    `drive main {\n  shaft { diameter: 35 mm }\n  seal { compression: 26 mm  free-length: ${path} * 4 }\n}\n`
  it.each([
    ['shaft.diamter', 'shaft.diameter'],
    ['shaf.diameter', 'shaft.diameter'],
    ['shaf.diamter', 'shaft.diameter'],
    ['main.shaf.diameter', 'main.shaft.diameter'],
    ['mian.shaft.diameter', 'main.shaft.diameter'],
  ])('in a path is put right where it stands: %s', (path, meant) => {
    expect(laws(seal(path), 'job/unresolved')).toEqual([`Write ${meant}`])
    expect(fixed(seal(path), 'job/unresolved', `Write ${meant}`)).toBe(seal(meant))
  })

  it('in a path is none where nothing is near, or where the fact is no amount', () => {
    for (const path of ['shaft.bearing', 'engine.diameter', 'shaft.diameter.x'])
      expect(laws(seal(path), 'job/unresolved')).toEqual([])
  })

  it('in the path of a block is put right too', () => {
    const text = (path: string) => `battery house { nominal: 96 V }
drive main {
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 1 m  insulation: 105 degC }
  controller { input: 72..120 V }
}
protection main-fuse { rating: 315 A  in: ${path} }
`
    expect(laws(text('main.fed'), 'job/unresolved')).toEqual(['Write main.feed'])
  })
})

describe('a missing fact', () => {
  const job = 'job "x" { vessel: "v"  status: draft }\n'
  const add = (text: string, title: string) => fixed(job + text, 'job/fact-missing', title).slice(job.length)

  it('goes in its place, in line with the others, and makes up no figure', () => {
    const text = 'drive main {\n  coupling {\n    kind:   rigid\n    offset: max 0.15 mm\n  }\n}\n'
    expect(add(text, 'Add flange-diameter')).toBe(
      'drive main {\n  coupling {\n    kind:            rigid\n    flange-diameter: ?\n    offset:          max 0.15 mm\n  }\n}\n',
    )
  })

  it('goes into a block of one line, and into an empty one', () => {
    expect(add('drive main { coupling { kind: rigid } }\n', 'Add flange-diameter')).toBe(
      'drive main { coupling { kind: rigid  flange-diameter: ? } }\n',
    )
    expect(add('drive main { coupling { } }\n', 'Add flange-diameter')).toBe(
      'drive main { coupling { flange-diameter: ? } }\n',
    )
  })

  it('goes in with all others, in the order of the vocabulary', () => {
    expect(add('drive main { coupling { } }\n', 'Add the 2 missing facts')).toBe(
      'drive main { coupling { kind: ?  flange-diameter: ? } }\n',
    )
    const cable = 'cable feed {\n  conductor: 35 mm2\n  place: open\n}\n'
    expect(add(cable, 'Add the 4 missing facts')).toBe(
      'cable feed {\n  from: ?\n  to: ?\n  conductor: 35 mm2\n  length: ?\n  insulation: ?\n  place: open\n}\n',
    )
  })

  it('keeps the line ends of the file', () => {
    const text = 'drive main {\r\n  coupling {\r\n    kind: rigid\r\n  }\r\n}\r\n'
    expect(fixed(job + text, 'job/fact-missing', 'Add flange-diameter').slice(job.length)).not.toMatch(
      /[^\r]\n/,
    )
  })
})

describe('a missing block', () => {
  const job = 'job "x" { vessel: "v"  revision: "A"  status: for-review }\n'
  const drive = 'drive main {\n  shaft { diameter: 35 mm }\n}\n'

  it('goes where it belongs, a blank for each fact that the status asks for', () => {
    expect(fixed(job + drive, 'job/block-missing', 'Add a shaft-log')).toBe(
      `${job}drive main {\n  shaft { diameter: 35 mm }\n  shaft-log {\n    bore: ?\n  }\n}\n`,
    )
    expect(fixed(job + drive, 'job/block-missing', 'Add a bed')).toContain(
      '  bed {\n    adjuster: ?\n    foot aft-port {\n      from-coupling: ?\n      across:        ?\n    }\n  }\n',
    )
    expect(fixed(job + drive, 'job/block-missing', 'Add a cable')).toContain(
      '  cable phases {\n    from:       ?\n',
    )
    expect(fixed(job + drive, 'job/block-missing', 'Add a battery')).toMatch(/\n}\n\nbattery house \{\n/)
    expect(fixed(job, 'job/block-missing', 'Add a drive')).toMatch(/\n\ndrive \S+ \{\n}\n$/)
  })

  it('goes in with all others, and then nothing is missing but facts', () => {
    const after = fixed(job + drive, 'job/block-missing', 'Add the 10 missing blocks')
    const left = findingsOf(after, allChecks).findings.filter(({ at }) =>
      at.section.text.includes('drive main'),
    )
    const found = left.map(({ check }) => check).filter((check) => !check.startsWith('caution/'))
    expect(new Set(found)).toEqual(new Set(['job/fact-missing']))
  })

  it('and an empty file is offered a job', () => {
    expect(fixed('', 'job/job-missing', 'Add a job')).toBe('job {\n  vessel: ?\n  status: draft\n}\n\n')
  })
})
