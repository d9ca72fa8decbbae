import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { asSnippet, layOut } from '../../../server/src/checks/fix-layout.ts'
import { findingsOf } from '../../checks/marks.ts'
import { fixed, offersOf, titles } from '../../checks/offers.ts'

/** The faces are 0.26 mm wider at the top than at the bottom on 100 mm: the far end stands low by 2.6 mm in a metre, and to rise by it. */
const job = (after = '', bed = 'adjuster: stud-and-nuts\n    thread:   M16') => `drive main {
  coupling {
    flange-diameter: 100 mm
    gap-variation:   max 0.10 mm   [maker]
    offset:          max 0.15 mm   [maker]
  }
  bed {
    ${bed}
    foot aft-port { from-coupling: 200 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 200 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 600 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 600 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken:   2026-03-04
    afloat:  no
    gauge:   0.02 mm
    gaps:    top 1.93 mm, starboard 1.80 mm, bottom 1.67 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
${after}}
`
const outside = 'alignment/gap-variation-outside'
const write = 'Write this move into the job'
const codes = (text: string) => findingsOf(text, allChecks).findings.map(({ check }) => check)

describe('the move of the plan', () => {
  it('is written below the reading, in flats of the thread', () => {
    // Rise 2.6e-3 · 200 mm = 0.52 mm and 2.6e-3 · 600 mm = 1.56 mm. M16 has 2 mm pitch (ISO 261), a flat is 1/3 mm:
    // 1.56 flats and 4.68 flats; to the half flat 1.5 and 4.5.
    const after = fixed(job(), outside, write)
    expect(after).toBe(
      job(`  move after dry-1 {
    aft-port: up 1.5 flats
    aft-stbd: up 1.5 flats
    fwd-port: up 4.5 flats
    fwd-stbd: up 4.5 flats
  }
`),
    )
    // When and by whom it is made nobody knows yet: it is planned, and is not written a second time.
    expect(codes(after)).toContain('alignment/move-planned')
    expect(codes(after)).not.toContain('alignment/no-reading-after-move')
    expect(titles(after, outside)).not.toContain(write)
  })

  it('is in lengths where the feet are set by shims, sideways too', () => {
    const shims = 'adjuster: shims\n    shims:    0.02 mm, 0.52 mm'
    const text = job('', shims)
      .replace('starboard 1.80 mm, bottom', 'starboard 1.85 mm, bottom')
      .replace('port 1.80 mm\n', 'port 1.75 mm\n')
    // 0.10 mm wider at starboard than at port on 100 mm: the far end stands to port by 1 mm in a metre, as wider at the top it stands low.
    const after = fixed(text, outside, write)
    expect(after).toContain('aft-port: up 0.52 mm, starboard 0.20 mm')
    expect(after).toContain('fwd-stbd: up 1.56 mm, starboard 0.60 mm')
    expect(codes(after).filter((code) => code.startsWith('job/'))).toEqual(['job/job-missing'])
  })

  it('has the digits of its shims: 0.525 mm is not written as 0.53 mm', () => {
    // 3 · 0.525 mm is 1.575 mm, near the 1.56 mm and 0.52 mm that are wanted.
    const after = fixed(job('', 'adjuster: shims\n    shims:    0.525 mm'), outside, write)
    expect(after).toContain('aft-port: up 0.525 mm')
    expect(after).toContain('fwd-port: up 1.575 mm')
  })

  it('is not offered where the plan withholds it: readings that contradict each other', () => {
    const text = job().replace('port 1.80 mm\n    offsets', 'port 1.20 mm\n    offsets')
    expect(codes(text)).toContain('alignment/readings-do-not-close')
    expect(titles(text, outside)).not.toContain(write)
  })

  it('is not offered for a reading that a later one follows', () => {
    const later = `  reading dry-2 {
    taken: 2026-03-05
    gauge: 0.02 mm
    gaps:  top 1.93 mm, starboard 1.80 mm, bottom 1.67 mm, port 1.80 mm
  }
`
    const { offers } = offersOf(job(later), outside)
    expect(offers.filter(({ fix }) => fix.title === write)).toHaveLength(1)
    expect(offers.filter(({ fix }) => fix.title === 'Add the next reading, dry-3')).toHaveLength(1)
  })
})

describe('a planned move', () => {
  const planned = fixed(job(), outside, write)

  it('is corrected where the plan asks something else, and not written twice', () => {
    const other = planned.replace('up 1.5 flats', 'down 3 flats')
    expect(titles(other, outside)).toContain('Correct the planned move')
    expect(fixed(other, outside, 'Correct the planned move')).toBe(planned)
  })

  it('is noted as made today, by whom is asked for', () => {
    const made = fixed(planned, 'alignment/move-planned', 'It was made today')
    expect(made).toMatch(
      /move after dry-1 \{\n {4}done: +2026-03-10\n {4}by: +\?\n {4}aft-port: up 1\.5 flats/,
    )
    expect(codes(made)).toContain('alignment/no-reading-after-move')
    expect(codes(made)).not.toContain('alignment/move-planned')
  })

  it('that a reading follows is dated or deleted, and no date is made up', () => {
    const later = `  reading dry-2 {
    taken: 2026-03-05
    gauge: 0.02 mm
    gaps:  top 1.93 mm, starboard 1.80 mm, bottom 1.67 mm, port 1.80 mm
  }
}
`
    const text = planned.replace(/\}\n$/, later)
    const check = 'alignment/move-not-dated'
    expect(fixed(text, check, 'It was not made: delete it')).not.toContain('move after')
    expect(fixed(text, check, 'It was made: add the date')).toMatch(/move after dry-1 \{\n {4}done: +\?\n/)
    for (const { fix } of offersOf(text, check).offers) expect(fix).not.toHaveProperty('preferred')
  })
})

describe('the next reading', () => {
  const moved = `  move after dry-1 { done: 2026-03-04  fwd-port: up 1 flat }
`
  const add = 'Add the next reading, dry-2'
  const check = 'alignment/no-reading-after-move'

  it('goes below the move, of today, with the same gauge and places, and no figures', () => {
    expect(fixed(job(moved), check, add)).toBe(
      job(`${moved}  reading dry-2 {
    taken:   2026-03-10
    afloat:  no
    gauge:   0.02 mm
    gaps:    top ? mm, starboard ? mm, bottom ? mm, port ? mm
    offsets: top ? mm, starboard ? mm, bottom ? mm, port ? mm
  }
`),
    )
  })

  it('has a blank for the gaps where the one before has no figures', () => {
    const text = job(moved).replace(/ {4}(?:gaps|offsets): .*\n/g, '')
    expect(fixed(text, check, add)).toContain('    gauge: 0.02 mm\n    gaps: ?\n  }')
  })

  it('has a blank for each figure, its unit behind it (LSP 3.18, snippet syntax)', () => {
    const { offers } = offersOf(job(moved), check)
    const [edit] = layOut(offers[0]?.fix.edits ?? [], { blanks: true })
    expect(asSnippet(edit?.newText ?? '')).toContain(
      `gaps:    top \${1:?} mm, starboard \${2:?} mm, bottom \${3:?} mm, port \${4:?} mm\n    offsets: top \${5:?} mm,`,
    )
  })

  it.each([
    ['dry-9', 'dry-10'],
    ['dry-09', 'dry-10'],
    ['first', 'first-2'],
  ])('after %s is %s', (name, next) => {
    expect(titles(job(moved).replaceAll('dry-1', name), check)).toEqual([`Add the next reading, ${next}`])
  })
})

describe('offsets that were not read', () => {
  it('get their places', () => {
    const text = job()
      .replace(/ {4}offsets: .*\n/, '')
      .replace('1.93 mm', '1.80 mm')
      .replace('1.67 mm', '1.80 mm')
    expect(fixed(text, 'alignment/offset-not-measured', 'Add the offsets')).toContain(
      'port 1.80 mm\n    offsets: top ? mm, starboard ? mm, bottom ? mm, port ? mm\n',
    )
  })
})

it('a foot that the bed does not have may be the nearest, or any that is not named yet', () => {
  const text = `drive main {
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 { taken: 2026-03-04  gauge: 0.02 mm  gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm }
  move after dry-1 { done: 2026-03-04  aft-prt: up 1 flat  aft-stbd: up 1 flat }
}
`
  expect(titles(text, 'alignment/move-of-unknown-foot')).toEqual([
    'Write aft-port',
    'Write fwd-port',
    'Write fwd-stbd',
  ])
})
