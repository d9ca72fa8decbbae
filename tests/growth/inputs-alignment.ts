// What can be long in the log of an alignment and what it is made from.
import { type Input, planned } from './input.ts'
import { aligned, bed, coupling, drive, figures, footOf, move, places, reading, times } from './job-parts.ts'

export const ofAlignment: Readonly<Record<string, Input>> = {
  'readings of a drive': {
    from: 12,
    by: planned,
    text: (count) => drive(`${coupling}${bed(4)}${times(count, (i) => reading(`r${i}`))}`),
  },
  'readings that none replaces': {
    from: 20,
    by: ['check', 'plan'],
    text: (count) =>
      drive(
        `${coupling}${bed(4)}${times(count, (i) => reading(`r${i}`, '    gauge: 0.02 mm\n    gaps: top 1.92 mm\n'))}`,
      ),
  },
  'moves of a log': {
    from: 12,
    by: planned,
    text: (count) =>
      drive(
        `${coupling}${bed(4)}${times(
          count,
          (i) => `${reading(`r${i}`)}${move(`r${i}`, '    f0: up 1 flat\n    f1: up 1 flat\n')}`,
        )}`,
      ),
  },
  'moves after one reading': {
    from: 20,
    by: planned,
    text: (count) => drive(`${aligned}${times(count, () => move('dry', '    f0: up 1 flat\n'))}`),
  },
  'planned moves': {
    from: 20,
    by: planned,
    text: (count) => drive(`${aligned}${times(count, () => move('dry', '    f0: up 1 flat\n', ''))}`),
  },
  'feet of a bed': {
    from: 50,
    by: planned,
    text: (count) => drive(`${coupling}${bed(count)}${reading('dry')}`),
  },
  'feet of a move': {
    from: 40,
    by: planned,
    text: (count) =>
      drive(
        `${aligned}${move(
          'dry',
          times(count, (i) => `    f${i}: up 1 flat\n`),
        )}`,
      ),
  },
  'feet slackened': {
    from: 110,
    by: ['check', 'plan'],
    text: (count) =>
      drive(
        `${coupling}${bed(4)}${reading('dry', `${figures}    lifts: ${times(count, (i) => `f${i} 0.02 mm`, ', ')}\n`)}`,
      ),
  },
  // A plane is fitted to no more than 60.
  'places that a plane is fitted to': {
    from: 15,
    by: ['check', 'plan'],
    text: (count) =>
      drive(`${coupling}${bed(4)}${reading('dry', `    gauge: 0.02 mm\n    gaps: ${places(count)}\n`)}`),
  },
  'places of a reading': {
    from: 110,
    by: ['check', 'edit'],
    text: (count) =>
      drive(
        `${coupling}${bed(4)}${reading('dry', `    gauge: 0.02 mm\n    gaps: ${places(count)}\n    offsets: ${places(count)}\n`)}`,
      ),
  },
  'shims in stock': {
    from: 50,
    by: ['plan'],
    text: (count) =>
      drive(
        `${coupling}  bed {\n    adjuster: shims\n    shims: ${times(count, (i) => `${0.05 * (i + 1)} mm`, ', ')}\n${times(4, footOf)}  }\n${reading('dry')}`,
      ),
  },
}
