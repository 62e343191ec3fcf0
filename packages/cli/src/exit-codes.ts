/** What the command's exit code says. Stable: scripts rest on it. */
export const exitCodes = {
  /** The question is answered. */
  answered: 0,
  /** Answered, and the answer is no: out of reach within the limits, or a limit is passed. */
  notWithinLimits: 1,
  /** A plan, an option or a file is at fault; nothing was written. */
  badInput: 2,
  /** The plan reads well but cannot be solved. */
  notSolved: 3,
  /** A fault of Plugside's own. */
  ownFault: 4,
} as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];

export const exitCodeLines: readonly (readonly [ExitCode, string])[] = [
  [exitCodes.answered, 'answered'],
  [
    exitCodes.notWithinLimits,
    'answered, but not within the limits: out of reach, no water, or a limit passed',
  ],
  [exitCodes.badInput, 'a plan, an option or a file is at fault; nothing was written'],
  [exitCodes.notSolved, 'the plan reads well but cannot be solved; the message says why'],
  [exitCodes.ownFault, 'a fault of Plugside itself'],
];
