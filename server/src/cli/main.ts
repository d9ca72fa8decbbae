#!/usr/bin/env node
import { isMainThread } from 'node:worker_threads'
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander'
import * as z from 'zod'
import { today } from '../editor/today.ts'
import { check } from './check.ts'
import { format } from './format.ts'
import { plan } from './plan.ts'
import { CannotRun } from './run.ts'
import { serveCommand } from './serve.ts'

const day = (text: string): string => {
  if (!z.iso.date().safeParse(text).success)
    throw new InvalidArgumentError('Write a day of the calendar as year-month-day, such as 2026-03-04.')
  return text
}
const output = () =>
  new Option('--format <form>', 'how results are printed').choices(['text', 'json']).default('text')
const onDay = () =>
  new Option('--today <date>', 'the day concessions are held against')
    .argParser(day)
    .default(today(), 'today')

const program = new Command('shaftwright')
  .description('Job files for electric drivetrain installs in boats: checked, planned, laid out.')
  .exitOverride()
  .showHelpAfterError('(--help tells more)')

program
  .command('check')
  .description('Check job files; ends with 1 when errors are found, 2 when it could not run.')
  .argument('[path...]', 'files, or folders with all *.wright below them', ['.'])
  .addOption(output())
  .addOption(onDay())
  .action(check)

program
  .command('plan')
  .description('Work out the moves of each foot from a reading of the coupling.')
  .argument('<path>', 'the job file')
  .option('--drive <name>', 'which drive, where there are several')
  .option('--reading <name>', 'which reading; the last one if not said')
  .addOption(output())
  .action(plan)

program
  .command('format')
  .description('Lay job files out.')
  .argument('<path...>', 'files, or folders with all *.wright below them')
  .option('--check', 'change nothing; end with 1 when a file would change')
  .action(format)

program
  .command('serve')
  .description('Serve the language to an editor.')
  .requiredOption('--stdio', 'over standard input and output')
  .action(serveCommand)

// The exit code is set, not forced: what has been written may still be on its way through a pipe.
// In a thread of `check` this file is only its code.
try {
  if (isMainThread) await program.parseAsync()
} catch (error) {
  if (error instanceof CommanderError) process.exitCode = error.exitCode === 0 ? 0 : 2
  else {
    console.error(error instanceof CannotRun ? error.message : error)
    process.exitCode = 2
  }
}
