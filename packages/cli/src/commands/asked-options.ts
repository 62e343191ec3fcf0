import {
  adjusted,
  asTheyCome,
  fireLinePdpRange,
  marginShareRange,
  type Situation,
  shareText,
  usualFireLinePdpPsi,
  usualMarginShare,
} from '@plugside/fireground';
import type { Command } from 'commander';
import { quantityArgument } from '../input/quantity-argument.ts';
import { shareArgument } from '../input/share-argument.ts';

export interface AskedOptions {
  spare?: number;
  linePressure?: number;
}

/** `--spare` and `--line-pressure`, for commands that choose a supply. */
export function withAskedOptions(command: Command): Command {
  return command
    .option(
      '--spare <share>',
      `share of the demand that a way should have to spare, in per cent (${shareText(usualMarginShare)} where left out)`,
      shareArgument(marginShareRange),
    )
    .option(
      '--line-pressure <pressure>',
      `discharge pressure that the lines at the fire need of their pump (${usualFireLinePdpPsi} psi where left out)`,
      quantityArgument(fireLinePdpRange),
    );
}

/** The situation with what was asked for. */
export function askedWith(situation: Situation, options: AskedOptions): Situation {
  const { spare, linePressure } = options;
  return adjusted(situation, {
    ...asTheyCome,
    ...(spare !== undefined && { marginShare: spare }),
    ...(linePressure !== undefined && { fireLinePdpPsi: linePressure }),
  });
}
