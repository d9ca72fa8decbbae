// Finds the browser the workbench is shown in.
import { execFileSync } from 'node:child_process'
import { accessSync, constants, readFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable']

const onPath = (): string | undefined => {
  const folders = (process.env['PATH'] ?? '').split(delimiter).concat('/usr/bin', '/snap/bin')
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(isExecutable)
}

const isExecutable = (file: string): boolean => {
  try {
    accessSync(file, constants.X_OK)
    return true
  } catch {
    return false
  }
}

const isRootOnDebian = (): boolean => {
  try {
    return process.getuid?.() === 0 && /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'))
  } catch {
    return false
  }
}

/** Path of a Chromium. A container of Debian gets one installed; anybody else is told what is missing. */
export const findChromium = (): string => {
  const found = process.env['CHROMIUM_PATH'] ?? onPath()
  if (found) return found
  if (isRootOnDebian()) {
    console.log('No Chromium here: installing the one of Debian.')
    const options = { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } } as const
    execFileSync('apt-get', ['update', '-qq'], options)
    execFileSync('apt-get', ['install', '-y', '-qq', 'chromium'], options)
    const installed = onPath()
    if (installed) return installed
  }
  throw new Error(
    'The workbench tests need Chromium or Chrome. Install one (Debian: apt-get install chromium) ' +
      'or set CHROMIUM_PATH to the one you have.',
  )
}
