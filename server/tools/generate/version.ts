import { readFileSync } from 'node:fs'
import { join } from 'node:path'

/** The version of package.json as code: a server in a browser has no file to read it from. */
export function versionModule(root: string): string {
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }
  return `// Made by npm run generate from package.json.
export const version = ${JSON.stringify(version)}
`
}
