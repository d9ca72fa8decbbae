// npm run package: the extension as one .vsix, kept small.
import { mkdirSync } from 'node:fs'
import { stat } from 'node:fs/promises'
import { join, relative } from 'node:path'
import { dist, root } from './bundles.ts'
import { packageExtension } from './vsix.ts'

const limit = 1_100_000
const file = join(dist, 'shaftwright.vsix')

mkdirSync(dist, { recursive: true })
await packageExtension(file)
const { size } = await stat(file)
const kilobytes = `${Math.round(size / 1000)} kB`
if (size >= limit)
  throw new Error(`${relative(root, file)} has ${kilobytes}: the limit is ${limit / 1000} kB.`)
console.log(`${relative(root, file)}: ${kilobytes}`)
