import { QuantityError, requireCount, requireWithin } from '@plugside/hydraulics';
import { type NozzleMake, nozzleRatedGpm } from '../catalogue/nozzles.ts';
import { newNozzle } from '../patterns/pieces.ts';
import { sayIn } from '../words/say.ts';
import {
  answered,
  type DemandAbout,
  type DemandAnswer,
  type DemandOptions,
  type DemandStep,
  fact,
  step,
  without,
} from './answer.ts';

/** A line or several like ones in use, with a nozzle or with the flow that was metered. */
export type LineInUse = {
  /** For people: "Attack line, side A". */
  name?: string;
  /** Like lines; 1 where left out. */
  count?: number;
} & ({ nozzle: NozzleMake } | { flowGpm: number });

export const linesInUseAbout: DemandAbout = {
  method: 'lines in use',
  title: 'Lines in use',
  inputs: [],
  source: { title: "Each nozzle's flow at its rated pressure", fromMemory: false },
};

/**
 * What the crew has in use: each line's flow at its nozzle's rated pressure, or as metered.
 *   Q = Σ count·flow
 * @param lines nozzles, or flows [gpm] of 0 to 5,000; like lines, 1 to 20
 * @returns flow [gpm]; an automatic nozzle counts with its greatest flow; no duration
 * Valid: nozzles pumped at their rated pressure.
 * Outside: throws QuantityError for a count or flow out of its range, or a nozzle that has none.
 * Source: nozzleRatedGpm.
 */
export function demandFromLines(
  lines: readonly LineInUse[],
  { units = 'us' }: DemandOptions = {},
): DemandAnswer {
  if (lines.length === 0) {
    return without(linesInUseAbout, {
      fields: [],
      text: 'Add the lines in use, each with its nozzle or its flow.',
    });
  }
  const say = sayIn(units);
  const steps: DemandStep[] = [];
  let neededGpm = 0;
  let automatic = false;
  for (const [at, line] of lines.entries()) {
    const count = line.count ?? 1;
    const place = `lines[${at}]`;
    requireCount(`${place}.count`, count, 1);
    requireWithin(`${place}.count`, count, [1, 20], 'lines');
    const eachGpm = flowOf(line, place);
    if ('nozzle' in line && line.nozzle.kind === 'automatic') automatic = true;
    neededGpm += count * eachGpm;
    const name = line.name ?? `Line ${at + 1}`;
    steps.push(
      step(
        count === 1
          ? `${name}: ${say.full(eachGpm, 'flow')}.`
          : `${name}: ${count} × ${say.full(eachGpm, 'flow')} = ${say.full(count * eachGpm, 'flow')}.`,
        count * eachGpm,
        'gpm',
      ),
    );
  }
  if (lines.length > 1) {
    steps.push(step(`Together: ${say.full(neededGpm, 'flow')}.`, neededGpm, 'gpm'));
  }
  return answered(linesInUseAbout, {
    neededGpm,
    steps,
    notices: automatic
      ? [fact('An automatic nozzle takes what it is given; it counts with its greatest flow.')]
      : [],
  });
}

function flowOf(line: LineInUse, place: string): number {
  if ('flowGpm' in line) {
    requireWithin(`${place}.flowGpm`, line.flowGpm, [0, 5000], 'gpm');
    return line.flowGpm;
  }
  const flowGpm = nozzleRatedGpm(newNozzle(place, line.nozzle));
  if (!(flowGpm >= 0 && flowGpm <= 5000)) {
    throw new QuantityError({
      field: `${place}.nozzle`,
      value: flowGpm,
      allowed: 'a nozzle of 0 to 5,000 gpm',
      remedy: 'Check its tip, rating and pressure.',
    });
  }
  return flowGpm;
}
