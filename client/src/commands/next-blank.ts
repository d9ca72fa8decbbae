import { blankFrom } from '../blanks.ts'
import { goToBlank } from '../go-to-blank.ts'
import type { Command } from './command.ts'

export const nextBlank: Command = {
  id: 'shaftwright.nextBlank',
  run: () => goToBlank((text, { end }) => blankFrom(text, end), 'tab'),
}
