import type { LanguageServer } from '../language-server.ts'

/** A command of the palette; its title stands in package.json under the same id. */
export type Command = { readonly id: string; readonly run: (server: LanguageServer) => unknown }
