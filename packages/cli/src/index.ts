/** The command line: questions asked of plan files, for people and for programs. */
export { type ExitCode, exitCodes } from './exit-codes.ts';
export { runCommand } from './run-command.ts';
