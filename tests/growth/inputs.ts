// Everything a person, or a script, can make long in a job: each by its name, as a text of so many of it. All data invented.
import { type Input, planned, typed } from './input.ts'
import { ofAlignment } from './inputs-alignment.ts'
import {
  aligned,
  bank,
  branch,
  cable,
  conceded,
  controller,
  drive,
  fuse,
  head,
  job,
  motor,
  narrow,
  places,
  reading,
  source,
  times,
} from './job-parts.ts'

export const inputs: Readonly<Record<string, Input>> = {
  'cables at a bus': {
    from: 40,
    by: ['check', 'type'],
    text: (count) =>
      drive(`motor m { power: 15 kW }
controller { input: 72..120 V }
protection bus { kind: fuse rating: 315 A in: c0 }
cable c0 { from: house to: bus conductor: 95 mm2 length: 2.5 m insulation: 105 degC }
cable c1 { from: bus to: controller conductor: 95 mm2 length: 2.5 m insulation: 105 degC }
${times(count, branch)}`),
  },
  'cables at a bus of all drives': {
    from: 40,
    by: ['check', 'type'],
    text: (count) => `${head}${source}${times(count, branch)}`,
  },
  'cables one after the other': {
    from: 40,
    by: ['check'],
    text: (count) =>
      drive(`motor m { power: 15 kW }
controller { input: 72..120 V }
protection p0 { kind: fuse rating: 315 A in: c0 }
cable c0 { from: house to: p0 conductor: 95 mm2 length: 2.5 m insulation: 105 degC }
${times(count, (i) => `cable c${i + 1} { from: p${i} to: p${i + 1} conductor: 95 mm2 length: 2.5 m insulation: 105 degC }\nprotection p${i + 1} { kind: fuse rating: 10 A in: c${i + 1} }\n`)}cable last { from: p${count} to: controller conductor: 95 mm2 length: 2.5 m insulation: 105 degC }
`),
  },
  'parts like the one before': {
    from: 200,
    by: ['check', 'type'],
    text: (count) =>
      `${head}shaft s0 { length: 2 m }\n${times(count, (i) => `shaft s${i + 1} { like: s${i} }\n`)}`,
  },
  'parts like the one behind': {
    from: 200,
    by: ['check'],
    text: (count) =>
      `${head}${times(count, (i) => `shaft s${i} { like: s${i + 1} }\n`)}shaft s${count} { length: 2 m }\n`,
  },
  'drives like the one before': {
    from: 100,
    by: ['check'],
    text: (count) =>
      `${head}drive d0 { motor { power: 15 kW } }\n${times(count, (i) => `drive d${i + 1} { like: d${i} }\n`)}`,
  },
  'sums of the one before': {
    from: 200,
    by: ['check', 'type'],
    text: (count) =>
      `${head}shaft s0 { length: 2 m }\n${times(count, (i) => `shaft s${i + 1} { length: s${i}.length + 1 mm }\n`)}`,
  },
  'blocks in a circle': {
    from: 100,
    by: ['check'],
    text: (count) =>
      `${head}${times(count, (i) => `cable c${i} { from: p${i} to: p${(i + 1) % count} }\nprotection p${i} { in: c${i} }\n`)}`,
  },
  'dots in a name': {
    from: 2000,
    by: ['check'],
    text: (count) => drive(`shaft { length: ${'main.'.repeat(count)}length }\n`),
  },
  'amounts without a unit': {
    from: 10,
    by: ['check', 'offer'],
    text: (count) => drive(times(count, (i) => `  cable c${i} {\n    length: 2\n  }\n`)),
  },
  'merge conflicts': {
    from: 16,
    by: ['check', 'offer'],
    text: (count) =>
      drive(
        times(
          count,
          (i) =>
            `<<<<<<< ours\n  shaft s${i} { length: 2 m }\n=======\n  shaft s${i} { length: 3 m }\n>>>>>>> theirs\n`,
        ),
      ),
  },
  ...ofAlignment,
  bearings: {
    from: 25,
    by: typed,
    text: (count) =>
      drive(
        `  shaft {\n    diameter: 35 mm h9\n    length: 9 m\n  }\n${times(count, (i) => `  bearing b${i} {\n    at: ${i / 100} m\n    kind: water-lubricated\n    bore: 35.2 mm\n  }\n`)}`,
      ),
  },
  'places of clearance': {
    from: 110,
    text: (count) => drive(`  shaft-log {\n    bore: 60 mm\n    clearance: ${places(count)}\n  }\n`),
  },
  terminals: {
    from: 110,
    by: typed,
    text: (count) =>
      drive(
        `  motor {\n    terminals: ${times(count, (i) => `U${i}`, ', ')}\n  }\n  controller {\n    terminals: ${times(count, (i) => `A${i}`, ', ')}\n  }\n`,
      ),
  },
  'pairs of a phase map': {
    from: 105,
    by: typed,
    text: (count) =>
      drive(
        `  motor {\n    terminals: ${times(count, (i) => `U${i}`, ', ')}\n  }\n  controller {\n    terminals: ${times(count, (i) => `A${i}`, ', ')}\n  }\n  phase-map {\n${times(count, (i) => `    A${i} to U${(i * 7) % count}\n`)}  }\n`,
      ),
  },
  'pairs of terminals that are not there': {
    from: 110,
    text: (count) =>
      drive(`${motor}${controller}  phase-map { ${times(count, (i) => `A${i} to U${i % 3}`, ', ')} }\n`),
  },
  'cables between two blocks': {
    from: 12,
    by: typed,
    text: (count) => drive(`${motor}${controller}${times(count, (i) => cable(`feed${i}`))}`),
  },
  'cables of the phases': {
    from: 20,
    text: (count) =>
      drive(`${motor}${controller}${times(count, (i) => cable(`p${i}`, 'controller', 'propulsion'))}`),
  },
  'fuses of one cable': {
    from: 20,
    text: (count) =>
      drive(`${motor}${controller}${cable('feed')}${times(count, (i) => fuse(`f${i}`, 'feed'))}`),
  },
  'cables, each with its fuse': {
    from: 12,
    by: typed,
    text: (count) =>
      drive(`${motor}${controller}${times(count, (i) => `${cable(`c${i}`)}${fuse(`f${i}`, `c${i}`)}`)}`),
  },
  banks: {
    // At each size the place typed at is in a block of the same kind.
    from: 16,
    by: typed,
    text: (count) =>
      `${head}${times(count, (i) => bank.replace('house', `b${i}`))}${times(count, (i) => `drive d${i} {\n  battery: b${i}\n${controller}${cable('feed', `b${i}`)}}\n`)}`,
  },
  drives: {
    from: 4,
    by: planned,
    text: (count) => `${head}${bank}${times(count, (i) => `drive d${i} {\n${aligned}}\n`)}`,
  },
  // Up to the limit of 200 blocks it is drives times blocks; beyond it each drive has a finding.
  'drives like one of as many blocks': {
    from: 210,
    by: ['check', 'type'],
    text: (count) =>
      `${head}drive main {\n${times(count, (i) => `bearing b${i} { at: 1 m bore: 34 mm }\n`)}}\n${times(count, (i) => `drive d${i} { like: main }\n`)}`,
  },
  'drives like one': {
    from: 15,
    by: planned,
    text: (count) =>
      `${head}${bank}drive main {\n${aligned}${motor}${controller}${cable('feed')}${fuse('main-fuse', 'feed')}}\n${times(count, (i) => `drive d${i} {\n  like: main\n${reading('dry')}}\n`)}`,
  },
  'blocks of a drive like another': {
    from: 20,
    text: (count) =>
      `${drive(times(count, (i) => cable(`c${i}`)))}drive other {\n  like: main\n${times(count, (i) => `  cable c${i} { length: 3 m }\n`)}}\n`,
  },
  'blocks like one part': {
    from: 25,
    by: typed,
    text: (count) =>
      `${head}${cable('stock').replaceAll(/^ {2}/gm, '')}${drive(`${controller}${times(count, (i) => `  cable c${i} {\n    like: stock\n    from: house\n    to: controller\n  }\n`)}`).slice(head.length)}`,
  },
  parts: {
    from: 30,
    by: typed,
    text: (count) =>
      `${head}${times(count, (i) => `shaft s${i} {\n  diameter: 35 mm h9\n  length: 2.65 m\n}\n`)}`,
  },
  concessions: {
    from: 15,
    by: typed,
    text: (count) => `${drive(narrow(count))}${times(count, (i) => conceded(`main.b${i}`))}`,
  },
  'concessions on one block': {
    from: 15,
    by: typed,
    text: (count) => `${drive(narrow(count))}${times(count, () => conceded('main'))}`,
  },
  'concessions that ended, in a job that is as-built': {
    from: 15,
    text: (count) =>
      `${drive(narrow(count)).replace(head, job('  status: as-built\n'))}${times(count, (i) => conceded(i % 2 ? 'main' : `main.b${i}`, `20${10 + (i % 10)}-02-01`))}`,
  },
  'origins in a bracket': {
    from: 250,
    text: (count) =>
      drive(
        `  shaft {\n    diameter: 35 mm [${times(count, (i) => (i % 2 ? 'maker' : '"S-07"'), ' ')}]\n  }\n`,
      ),
  },
  'words of a text': {
    from: 1000,
    text: (count) => drive(`  shaft {\n    material: "${times(count, (i) => `word${i}`, ' ')}"\n  }\n`),
  },
  'words of a value': {
    from: 250,
    text: (count) => drive(`  shaft {\n    diameter: ${times(count, (i) => `word${i}`, ' ')}\n  }\n`),
  },
  'values of a fact': {
    from: 250,
    text: (count) => drive(`  shaft {\n    diameter: ${times(count, (i) => `${i} mm`, ', ')}\n  }\n`),
  },
  'uses of files': {
    from: 100,
    by: typed,
    text: (count) => `${times(count, (i) => `use "parts/p${i}.wright"\n`)}${drive(aligned)}`,
  },
  'uses of one file': {
    from: 100,
    text: (count) => `${times(count, () => 'use "parts/p.wright"\n')}${drive(aligned)}`,
  },
  comments: {
    from: 150,
    by: typed,
    text: (count) =>
      `${times(count, (i) => `# words ${i}\n`)}${drive(times(count, (i) => `  # words ${i}\n`))}`,
  },
  'doc comments': {
    from: 250,
    text: (count) =>
      drive(`${times(count, (i) => `  ## words ${i}\n`)}  shaft {\n    diameter: 35 mm\n  }\n`),
  },
  'doc comments, each of a fact': {
    from: 50,
    text: (count) =>
      drive(times(count, (i) => `  ## words ${i}\n  bearing b${i} {\n    ## words\n    at: 1 m\n  }\n`)),
  },
  'unknown facts': {
    from: 100,
    text: (count) => drive(`  shaft {\n${times(count, (i) => `    diametre${i}: 35 mm\n`)}  }\n`),
  },
  'unknown blocks': {
    from: 50,
    by: typed,
    text: (count) => drive(times(count, (i) => `  baering b${i} {\n    at: 1 m\n  }\n`)),
  },
  'unknown words': {
    from: 100,
    text: (count) => drive(times(count, (i) => `  bearing b${i} {\n    kind: watr-lubricated\n  }\n`)),
  },
  // Below that each name is held against all there are.
  'references to nothing, among more names than are offered': {
    from: 510,
    by: ['check'],
    text: (count) => drive(times(count, (i) => `  bearing b${i} {\n    at: baering${i}.at\n  }\n`)),
  },
  'facts written twice': {
    from: 100,
    text: (count) => drive(`  shaft {\n${times(count, () => '    diameter: 35 mm\n')}  }\n`),
  },
  'blocks of one name': {
    from: 50,
    text: (count) => drive(times(count, () => '  bearing stern {\n    at: 0.21 m\n    bore: 35.2 mm\n  }\n')),
  },
  'drives of one name': {
    from: 4,
    by: typed,
    text: (count) => `${head}${bank}${times(count, () => `drive main {\n${aligned}}\n`)}`,
  },
  'jobs of a file': {
    from: 25,
    text: (count) => times(count, () => head),
  },
  'lines that are not understood': {
    from: 100,
    text: (count) => drive(times(count, (i) => `  word${i} and more\n`)),
  },
  'braces too many': {
    from: 100,
    text: (count) => drive(times(count, (i) => `  bearing b${i} {\n    at: 1 m\n  }\n  }\n`)),
  },
  'braces that are missing': {
    from: 50,
    by: typed,
    text: (count) => drive(times(count, (i) => `  bearing b${i} {\n    at: 1 m\n`)),
  },
  'texts that are not closed': {
    from: 100,
    text: (count) => drive(times(count, (i) => `  bearing b${i} {\n    note: "words\n  }\n`)),
  },
  'characters that mean nothing': {
    from: 250,
    text: (count) => drive(times(count, () => '  § @\n')),
  },
  'empty lines': {
    from: 500,
    text: (count) => drive('\n'.repeat(count)),
  },
  spaces: {
    from: 1000,
    text: (count) => drive(`  shaft {\n    diameter:${' '.repeat(count)}35 mm\n  }\n`),
  },
  'digits of a number': {
    from: 250,
    text: (count) => drive(`  shaft {\n    diameter: ${'3'.repeat(count)} mm\n  }\n`),
  },
  'separators of a number': {
    from: 100,
    text: (count) => drive(`  shaft {\n    diameter: ${'3,123'.repeat(count)} mm\n  }\n`),
  },
  'letters of a name': {
    from: 1000,
    text: (count) => drive(`  bearing b${'x'.repeat(count)} {\n    at: 1 m\n  }\n`),
  },
  'commas without values': {
    from: 250,
    text: (count) => drive(`  motor {\n    terminals: ${','.repeat(count)}\n  }\n`),
  },
  'blanks for what is not known': {
    from: 50,
    text: (count) => drive(times(count, (i) => `  bearing b${i} {\n    at: ? m\n    bore: ? mm\n  }\n`)),
  },
}
