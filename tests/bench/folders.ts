// A workspace of many job files that share parts. All data invented for demonstration.
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { jobOf } from './jobs.ts'

export interface Yard {
  readonly folder: string
  /** A job to have open: it takes a part that every job takes, and one that few take. */
  readonly job: { readonly uri: string; readonly text: string }
  readonly files: number
}

/** One job in so many takes the same rare part. */
export const share = 50

/** Writes so many job files of 140 lines, a hundred to a folder, which use one file of parts. */
export function writeYard(folder: string, files: number): Yard {
  mkdirSync(join(folder, 'parts'), { recursive: true })
  writeFileSync(join(folder, 'parts', 'gears.wright'), parts)
  const jobs = Array.from({ length: files - 1 }, (_, i) => {
    const text = jobWith(i)
    const path = join(folder, `boats-${Math.floor(i / 100)}`, `boat-${i}.wright`)
    mkdirSync(join(path, '..'), { recursive: true })
    writeFileSync(path, text)
    return { uri: pathToFileURL(path).href, text }
  })
  const [job] = jobs
  if (!job) throw new Error('a yard has a job')
  return { folder, job, files }
}

const parts = `# Parts that the jobs share. All data invented for demonstration.
gear gear-of-all { ratio: 2.5  turns: opposite }
${Array.from({ length: share }, (_, i) => `gear gear-${i} { ratio: ${2 + i / 100}  turns: opposite }\n`).join('')}`

const jobWith = (i: number): string => `use "../parts/gears.wright"

${jobOf(1)}drive tender {
  battery: bank-1

  propeller {
    diameter: 320 mm
    pitch:    210 mm
    blades:   3
    turns:    right-hand
  }

  shaft {
    diameter: 25 mm h9
    length:   1.45 m
    material: duplex-1-4462
  }

  # The gear of every job, and one of few.
  gear { like: gear-of-all }

  motor tender-motor {
    power:     4 kW
    speed:     1500 rpm
    mass:      22 kg
    voltage:   48 V
    terminals: U, V, W
  }
}

gear reserve { like: gear-${i % share} }
`
