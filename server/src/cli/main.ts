#!/usr/bin/env node
import { isMainThread } from 'node:worker_threads'
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander'
import * as z from 'zod'
import { areaCommands } from '../areas/commands.ts'
import { CannotRun } from '../areas/common/command.ts'
import { areas } from '../areas/index.ts'
import { vesselFault } from '../editor/client-requests.ts'
import { today } from '../host/today.ts'
import { runAreaCommand } from './area-command.ts'
import { check } from './check.ts'
import { format } from './format.ts'
import { newJob } from './new-job.ts'
import { results } from './results.ts'
import { serveCommand } from './serve.ts'
import { failWithOutput, print, printError } from './terminal.ts'
import { tool } from './tool.ts'

const day = (text: string): string => {
  if (!z.iso.date().safeParse(text).success)
    throw new InvalidArgumentError('Give a date as year-month-day, such as 2026-03-04.')
  return text
}
const wholeNumber = (text: string): number => {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError('Give a whole number, such as 0.')
  return Number(text)
}
const vesselName = (text: string): string => {
  const fault = vesselFault(text)
  if (fault !== undefined) throw new InvalidArgumentError(fault)
  return text.trim()
}
const output = (...more: readonly 'csv'[]) =>
  new Option('--format <form>', 'output format').choices(['text', 'json', ...more]).default('text')
const onDay = () =>
  new Option('--today <date>', 'date to use for checks and plans').argParser(day).default(today(), 'today')

const program = new Command('shaftwright')
  .description('Check, plan and format job files for electric drivetrain installs in boats.')
  .version(tool.version, '--version', 'print the version')
  .exitOverride()
  .configureOutput({
    writeOut: (text) => print(text.trimEnd().split('\n')),
    writeErr: (text) => printError(text.trimEnd().split('\n')),
  })
  .showHelpAfterError('(use --help for help)')

program
  .command('check')
  .description('Check job files. Exit code: 1 if errors are found, 2 if the check could not run.')
  .argument('[path...]', 'files, folders (all *.wright files below them), or - for standard input', ['.'])
  .addOption(output())
  .addOption(
    new Option('--max-warnings <n>', 'exit with 1 if there are more warnings than this').argParser(
      wholeNumber,
    ),
  )
  .addOption(onDay())
  .action(check)

for (const command of areaCommands) {
  const { name, description, options } = command
  const own = program
    .command(name)
    .description(description)
    .argument('<path>', 'the job file, or - for standard input')
  for (const option of options) own.option(option.flags, option.description)
  own
    .addOption(output(...(command.hasCsv ? ['csv' as const] : [])))
    .addOption(onDay())
    .action((path, given) => runAreaCommand(command, path, given))
}

program
  .command('results')
  .description('Print everything that is calculated from job files, with limits and margins.')
  .argument('[path...]', 'files, folders (all *.wright files below them), or - for standard input', ['.'])
  .addOption(
    new Option('--area <name>', 'only the results of this area').choices(
      areas.filter(({ figures }) => figures.length > 0).map(({ name }) => name),
    ),
  )
  .addOption(output('csv'))
  .addOption(onDay())
  .action(results)

program
  .command('new')
  .description('Print a new job, each value a ? to fill in.')
  .argument('<vessel>', 'name of the vessel', vesselName)
  .addOption(new Option('--drives <n>', 'how many drives').choices(['1', '2']).default('1'))
  .addOption(
    new Option('--units <system>', 'units of the values').choices(['metric', 'inch']).default('metric'),
  )
  .addOption(
    new Option('--feet <kind>', 'how the feet of the motor get their height')
      .choices(['studs', 'shims'])
      .default('studs'),
  )
  .action(newJob)

program
  .command('format')
  .description('Format job files.')
  .argument('<path...>', 'files, or folders (all *.wright files below them)')
  .option('--check', 'change nothing; exit with 1 if a file would change')
  .action(format)

program
  .command('serve')
  .description('Run the language server for an editor.')
  .requiredOption('--stdio', 'communicate over standard input and output')
  .action(serveCommand)

// The exit code is set, not forced: what has been written may still be on its way through a pipe.
// In a thread of `check` this file is only its code.
try {
  if (isMainThread) {
    failWithOutput()
    await program.parseAsync()
  }
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : 2
  else {
    printError(
      error instanceof CannotRun
        ? [error.message]
        : String(error instanceof Error ? error.stack : error).split('\n'),
    )
    process.exitCode = 2
  }
}
