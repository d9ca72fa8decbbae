import { readFile } from 'node:fs/promises'
import type { Plugin } from 'esbuild'

/** What a check says for its page and its tests alone: its examples. The server never reads them. */
const forPages =
  /^ {2}(fires|quiet):\s+(?:`(?:[^`\\]|\\[\s\S])*`|'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"),$/gm

/** Leaves out of a bundle what only the pages and tests of the checks show. */
export const withoutExamples: Plugin = {
  name: 'without-examples',
  setup: ({ onLoad }) =>
    onLoad({ filter: /server\/src\/(?:checks\/job|areas\/[a-z]+\/checks)\/.+\.ts$/ }, async ({ path }) => ({
      contents: (await readFile(path, 'utf8')).replace(forPages, "  $1: '',"),
      loader: 'ts',
    })),
}
