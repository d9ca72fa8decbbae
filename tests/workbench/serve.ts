// npm run workbench: VS Code with the packaged extension and the demo jobs, for whoever has only a browser at hand.
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { installExtension, startVsCode } from './vscode-server.ts'

const root = resolve(import.meta.dirname, '../..')
const home = mkdtempSync(join(tmpdir(), 'shaftwright-'))
const jobs = join(home, 'examples')
cpSync(join(root, 'docs/examples'), jobs, { recursive: true })

const ctrlC = new Promise<number>((done) => {
  for (const name of ['SIGINT', 'SIGTERM'] as const) process.once(name, () => done(0))
})
try {
  const extensions = join(home, 'extensions')
  await installExtension(join(root, 'dist/shaftwright.vsix'), extensions)
  const server = await startVsCode({ extensions, port: Number(process.env['PORT'] ?? 0) })
  console.log(`
Open http://127.0.0.1:${server.port}/?folder=${encodeURI(jobs)}

These are copies of the demo jobs: what you change is thrown away at the end. Ctrl+C ends it.`)
  process.exitCode = await Promise.race([ctrlC, server.ended])
  await server.stop()
} finally {
  rmSync(home, { recursive: true, force: true })
}
