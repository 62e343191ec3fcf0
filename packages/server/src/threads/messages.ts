/** What a pool and its threads say to each other. */
import { inspect } from 'node:util';
import { type Problem, ProblemError } from '../problem.ts';

/** A thread has one piece of work at a time, so a cancel can mean no other. */
export type ToThread = { say: 'do'; name: string; given: unknown } | { say: 'cancel' };

export type FromThread =
  | { say: 'progress'; progress: unknown }
  | { say: 'result'; result: unknown }
  | { say: 'failure'; failure: Failure };

/** A failure as plain data: a copy of an error would lose its class and its own members. */
export type Failure = { problem: Problem } | { name: string; message: string; stack: string };

/** @param problemOf what an error is told as over HTTP; undefined for one that nobody foresaw */
export function failureOf(
  error: unknown,
  problemOf: (error: unknown) => Problem | undefined,
): Failure {
  const problem = problemOf(error);
  if (problem) return { problem };
  const { name, message } = error instanceof Error ? error : new Error(String(error));
  return { name, message, stack: inspect(error) };
}

/** What is told over HTTP as the failure was; any other error keeps its name and where it was thrown. */
export function errorOf(failure: Failure): Error {
  if ('problem' in failure) return new ProblemError(failure.problem);
  const error = new Error(failure.message);
  error.name = failure.name;
  error.stack = failure.stack;
  return error;
}
