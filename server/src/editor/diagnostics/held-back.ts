import type { Diagnostic } from 'vscode-languageserver'
import type { Change } from '../workspace/workspace.ts'

/** What of the findings may be shown while the line is being written: all but those that are new on it. */
export function shownNow(
  before: readonly Diagnostic[],
  now: readonly Diagnostic[],
  line: number,
): readonly Diagnostic[] {
  const isOn = ({ range }: Diagnostic) => range.start.line === line
  const known = new Set(before.filter(isOn).map(({ code }) => code))
  return now.filter((finding) => !isOn(finding) || known.has(finding.code))
}

/** The line on which a change ends; undefined for a change of everything, and for none. */
export const lineOf = (change: Change | undefined): number | undefined =>
  change?.range && change.range.start.line + (change.text.match(/\r\n|\n|\r/g)?.length ?? 0)
