// Job files of any length: one drive after another, a hundred lines each. All data invented for demonstration.

type Fault = 'unit-missing' | 'word-misspelt' | 'coupling-loose' | 'cable-thin' | 'phase-doubled'

const faults: readonly Fault[] = [
  'unit-missing',
  'word-misspelt',
  'coupling-loose',
  'cable-thin',
  'phase-doubled',
]

/** A job of so many drives, with five faults spread over it: the same text every time. */
export function jobOf(drives: number): string {
  const of = (drive: number) => faults.filter((_, i) => Math.floor((i * drives) / faults.length) === drive)
  return [head, ...Array.from({ length: drives }, (_, i) => driveOf(i + 1, of(i)))].join('')
}

/** The drive in the middle of such a job, as its blocks name it. */
export const middleOf = (drives: number): string => `drive unit-${Math.ceil(drives / 2)} {`

const head = `# A job made to measure with. All data invented for demonstration.
job "Made to measure" {
  vessel:   "Measure 1"
  revision: "A"
  status:   for-review
  show-in:  metric
}

`

const driveOf = (n: number, has: readonly Fault[]): string => `battery bank-${n} {
  nominal:  96 V
  window:   84..108 V
  capacity: 210 Ah
}

drive unit-${n} {
  battery: bank-${n}

  propeller {
    diameter: 420 mm
    pitch:    300 mm
    blades:   3
    turns:    right-hand
  }

  shaft {
    diameter: 35 mm h9
    length:   2.65 m
    material: duplex-1-4462
  }

  bearing stern {
    at:     0.21 m
    kind:   water-lubricated
    length: ${has.includes('unit-missing') ? '140' : '140 mm'}
    bore:   35.20 mm
  }

  seal {
    shaft-size:      35 mm
    compression:     26 mm +3/-2 mm   [maker]
    free-length:     148 mm           [measured]
    fitted-length:   121 mm           [measured]
    clamps-each-end: 2
  }

  coupling {
    kind:            ${has.includes('word-misspelt') ? 'flexibel' : 'flexible'}
    flange-diameter: 125 mm
    gauge-diameter:  110 mm
    gap-variation:   max 0.10 mm   [maker]
    offset:          max 0.15 mm   [maker]
    bolts:           4 x M10 class 8.8, 45 N·m
  }

  gear { ratio: 2.5  turns: opposite }

  motor propulsion {
    power:        15 kW
    speed:        1500 rpm
    mass:         62 kg
    voltage:      58 V
    power-factor: 0.9
    terminals:    U, V, W
  }

  # Studs with two nuts at each foot.
  bed {
    adjuster: stud-and-nuts
    thread:   M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }

  reading dry-1 {
    taken:   2026-03-05
    afloat:  no
    gauge:   0.02 mm
    gaps:    ${has.includes('coupling-loose') ? 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm' : 'top 1.78 mm, starboard 1.80 mm, bottom 1.82 mm, port 1.80 mm'}
    offsets: top -0.08 mm, starboard 0.00 mm, bottom 0.08 mm, port 0.00 mm
  }

  controller { input: 72..120 V  terminals: A, B, C  efficiency: 96 % }

  cable feed {
    from:       bank-${n}
    to:         controller
    conductor:  ${has.includes('cable-thin') ? '25 mm2' : '95 mm2'}
    length:     2.5 m
    insulation: 105 degC
    place:      machinery-space
  }

  protection main-fuse { kind: fuse  rating: 315 A  in: feed  interrupts: 20 kA  at: 150 mm }

  cable phases {
    from:       controller
    to:         propulsion
    conductor:  70 mm2
    length:     1.8 m
    insulation: 105 degC
    place:      machinery-space
  }

  phase-map { A to U, B to V, ${has.includes('phase-doubled') ? 'C to V' : 'C to W'} }
}

`
