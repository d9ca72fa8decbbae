// Stands in for @vscode/spdlog, which VS Code writes its logs with and which npm carries uncompiled only: without it
// every log, the extension's too, would stay empty. The names are that module's.
import { closeSync, mkdirSync, openSync, writeSync } from 'node:fs'
import { dirname } from 'node:path'

const levels = ['trace', 'debug', 'info', 'warning', 'error'] as const

export const setFlushOn = (): void => {}

export const createAsyncRotatingLogger = async (_name: string, file: string) => {
  mkdirSync(dirname(file), { recursive: true })
  const log = openSync(file, 'a')
  let lowest = 0
  let plain = false
  const write = (level: number) => (message: string) => {
    if (level < lowest) return
    const time = new Date().toISOString().replace('T', ' ').replace('Z', '')
    writeSync(log, plain ? message : `${time} [${levels[level]}] ${message}\n`)
  }
  return {
    trace: write(0),
    debug: write(1),
    info: write(2),
    warn: write(3),
    error: write(4),
    setLevel: (level: number): void => {
      lowest = level
    },
    clearFormatters: (): void => {
      plain = true
    },
    setPattern: (): void => {},
    flush: (): void => {},
    drop: (): void => closeSync(log),
  }
}
