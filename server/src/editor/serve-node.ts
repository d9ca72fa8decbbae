import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs'
import { relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node'
import { features } from './features.ts'
import { startServer } from './server.ts'

/** A file's text, when the file really lies in the root: links that lead out of it are not followed. */
function read(uri: string, root: string): string | undefined {
  try {
    const path = realpathSync(fileURLToPath(uri))
    const inside = !/^(\.\.([/\\]|$)|[A-Za-z]:|[/\\])/.test(relative(realpathSync(fileURLToPath(root)), path))
    return inside && statSync(path).isFile() ? readFileSync(path, 'utf8') : undefined
  } catch {
    return undefined
  }
}

function today(): string {
  const now = new Date()
  const two = (n: number) => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** Serves the language over what the command line names: `--stdio`, or the channel of a parent process. */
export function serve(): void {
  const docs = new URL('../docs/checks/', import.meta.url)
  startServer(
    createConnection(ProposedFeatures.all),
    { read, today, ...(existsSync(docs) && { docs: docs.href }) },
    features,
  )
}
