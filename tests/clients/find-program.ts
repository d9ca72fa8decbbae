// Finds a program the tests need, and where it is missing installs it as far as that is possible.
import { execFileSync } from 'node:child_process'
import { accessSync, constants, readFileSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const isExecutable = (file: string): boolean => {
  try {
    accessSync(file, constants.X_OK)
    return true
  } catch {
    return false
  }
}

const onPath = (names: readonly string[]): string | undefined => {
  const folders = (process.env['PATH'] ?? '').split(delimiter).concat('/usr/bin', '/snap/bin')
  return folders.flatMap((folder) => names.map((name) => join(folder, name))).find(isExecutable)
}

const isRootOnDebian = (): boolean => {
  try {
    return process.getuid?.() === 0 && /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'))
  } catch {
    return false
  }
}

/** What a program is called, the package of Debian it comes in, and the variable that names another one. */
export type Program = {
  readonly title: string
  readonly names: readonly string[]
  readonly debian: string
  readonly variable: string
}

/** Path of the program. A container of Debian gets it installed; anybody else is told what is missing. */
export const findProgram = ({ title, names, debian, variable }: Program): string => {
  const found = process.env[variable] ?? onPath(names)
  if (found) return found
  if (isRootOnDebian()) {
    console.log(`No ${title} here: installing the one of Debian.`)
    const options = { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } } as const
    execFileSync('apt-get', ['update', '-qq'], options)
    execFileSync('apt-get', ['install', '-y', '-qq', debian], options)
    const installed = onPath(names)
    if (installed) return installed
  }
  throw new Error(
    `The tests need ${title}. Install it (Debian: apt-get install ${debian}) ` +
      `or set ${variable} to the one you have.`,
  )
}
