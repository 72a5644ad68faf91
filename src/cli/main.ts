/** The command line: the same core for authors, instructors and CI. Exit 0 success, 1 the thing checked is not right, 2 wrong use. */
import { check } from './check.ts';
import { grade } from './grade.ts';
import { Usage } from './options.ts';
import { netlist, reading } from './reading.ts';
import { schemas } from './schemas.ts';
import { suspects } from './suspects.ts';

const COMMANDS: Record<string, (args: string[]) => number> = { check, reading, netlist, grade, suspects, schemas };

const HELP = `ohmyard COMMAND [options]

  check FILE…        every error of our files: a book's folder, jobs, attempts   [--json]
  reading JOB        one reading, settled: --set CONTROL=VALUE … --red POINT --black POINT
                     [--meter volts-dc|volts-lo|ohms|continuity|diode|amps] [--range '60 V'] [--lead-ohms 0.2]
                     [--unplug X7] [--pull F12] [--lift 208A@to]
                     [--healthy] [--at MS] [--pairs FILE] [--json]
  netlist JOB        the settled network as SPICE text: --set … [--leads RED BLACK] [--healthy] [--at MS]
  grade ATTEMPT…     replays logs, verifies them, prints grades   [--json]
  suspects JOB [ATTEMPT]   what the complaint (and the log) leave, with shares   [--json]
  schemas            writes the JSON Schemas of our files

JOB is a job's file or its name (job-05). Every command has --help. None reads the network.`;

function main(argv: string[]): number {
  const [name, ...rest] = argv;
  const command = name === undefined ? undefined : COMMANDS[name];
  if (command === undefined || rest.includes('--help')) {
    console.log(HELP);
    return command === undefined && name !== '--help' ? 2 : 0;
  }
  try {
    return command(rest);
  } catch (error) {
    if (!(error instanceof Usage) && !(error instanceof RangeError)) throw error;
    console.error(error.message);
    return 2;
  }
}

process.exitCode = main(process.argv.slice(2));
