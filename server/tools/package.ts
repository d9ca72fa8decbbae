// npm run package: the extension as one .vsix, kept small.
import { stat } from 'node:fs/promises'
import { join, relative } from 'node:path'
import { createVSIX } from '@vscode/vsce'
import { bundle, dist, root } from './bundles.ts'

const limit = 1_000_000
const file = join(dist, 'shaftwright.vsix')

await bundle('package')
await createVSIX({
  cwd: root,
  packagePath: file,
  dependencies: false,
  allowMissingRepository: true,
  rewriteRelativeLinks: false,
})
const { size } = await stat(file)
const kilobytes = `${Math.round(size / 1000)} kB`
if (size >= limit)
  throw new Error(`${relative(root, file)} has ${kilobytes}: the limit is ${limit / 1000} kB.`)
console.log(`${relative(root, file)}: ${kilobytes}`)
