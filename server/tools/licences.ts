import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Metafile } from 'esbuild'

/** Libraries whose text is in a bundle, as folders. */
const bundled = (metafiles: readonly Metafile[]): readonly string[] => {
  const inputs = metafiles.flatMap(({ inputs }) => Object.keys(inputs))
  const folders = inputs.flatMap((file) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0] ?? [])
  return [...new Set(folders)].sort()
}

const licenceFile = /^(?:licen[cs]e|copying|notice|thirdpartynotices)(?:\.|$)/i

/** The licences of all that is bundled: most ask to go where the code goes. Throws for a library that brings none. */
export const licencesOf = (metafiles: readonly Metafile[], root: string): string => {
  const parts = bundled(metafiles).map((folder) => {
    const at = join(root, folder)
    const { name, version, license } = JSON.parse(readFileSync(join(at, 'package.json'), 'utf8'))
    const files = readdirSync(at).filter((file) => licenceFile.test(file))
    if (files.length === 0) throw new Error(`${name} is bundled, and brings no licence.`)
    const texts = files.map((file) => readFileSync(join(at, file), 'utf8').trim())
    return [`${name} ${version} (${license})`, ...texts].join('\n\n')
  })
  return `What is in the bundles beside our own code, and its licences.\n\n${parts.join(`\n\n${'-'.repeat(72)}\n\n`)}\n`
}
