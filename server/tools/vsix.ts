// The extension as one .vsix, made of a folder that holds just what a user needs.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createVSIX, listFiles, PackageManager } from '@vscode/vsce'
import { bundle, root, webEntry } from './bundles.ts'
import { withoutRelativeLinks } from './packaged-markdown.ts'

/** What a marketplace shows in tabs of its own looks for these at the top. */
const pages = { 'README.md': 'README.md', 'CHANGELOG.md': 'docs/changelog.md' }

export const packageExtension = async (vsix: string): Promise<void> => {
  const folder = mkdtempSync(join(tmpdir(), 'shaftwright-package-'))
  try {
    await bundle('package', join(folder, 'dist'))
    // The command line is not started from an extension.
    rmSync(join(folder, 'dist/cli.js'))
    const listed = await listFiles({ cwd: root, packageManager: PackageManager.None })
    const written = listed.filter((file) => !file.startsWith('dist/'))
    for (const file of written) cpSync(join(root, file), join(folder, file))
    const { type: _module, ...manifest } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
    writeFileSync(
      join(folder, 'package.json'),
      `${JSON.stringify({ ...manifest, browser: webEntry.package }, null, 2)}\n`,
    )
    for (const [page, source] of Object.entries(pages))
      writeFileSync(join(folder, page), withoutRelativeLinks(readFileSync(join(root, source), 'utf8')))
    await createVSIX({
      cwd: folder,
      packagePath: vsix,
      dependencies: false,
      allowMissingRepository: true,
    })
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
