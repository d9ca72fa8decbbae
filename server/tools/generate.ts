// npm run generate writes every file that follows from a declaration; npm run generate:check names those that differ.
import { generatedFiles, staleFiles, write } from './generate/files.ts'

const files = await generatedFiles()

if (process.argv.includes('--check')) {
  const stale = staleFiles(files)
  for (const { path, why } of stale) console.error(`${path}: ${why}`)
  if (stale.length > 0) {
    console.error('Run `npm run generate` and commit what it writes.')
    process.exitCode = 1
  }
} else {
  for (const { path, why } of write(files))
    console.log(`${path}: ${why === 'left behind' ? 'removed' : 'written'}`)
}
