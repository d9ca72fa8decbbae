import type { Refusal } from '../job/file-text.ts'

/** Why a file is not read, in one sentence. */
export function refusalWords(name: string, refusal: Refusal): string {
  switch (refusal.type) {
    case 'file-too-large':
      return `${name} is larger than 5 MB, so it is not read.`
    case 'file-not-utf8':
      return `${name} is ${refusal.encoding === undefined ? 'not UTF-8' : `${refusal.encoding}, not UTF-8`} text.`
    case 'file-unreadable':
      return `${name} cannot be read: ${refusal.why}.`
  }
}
