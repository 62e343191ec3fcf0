import { shareText } from '@plugside/fireground';
import { InvalidArgumentError } from 'commander';

/**
 * An option's reader for a share, written in per cent: `15%`. A bare number is refused: 0.15 may be
 * meant as a share or as a percentage.
 * @returns the share, 0.15 for `15%`
 */
export const shareArgument =
  ({ least, greatest }: { least: number; greatest: number }) =>
  (text: string): number => {
    const digits = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*%\s*$/.exec(text)?.[1];
    const share = Number(digits ?? Number.NaN) / 100;
    if (share >= least && share <= greatest) return share;
    const allowed = `${shareText(least)} to ${shareText(greatest)}`;
    throw new InvalidArgumentError(`Allowed: ${allowed}. Write it in per cent, as 15%.`);
  };
