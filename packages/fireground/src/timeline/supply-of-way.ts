import type { SupplyWay } from '../supply/choice.ts';
import { usualTimesOrigin } from './lay-tasks.ts';
import type { TimelineSupply } from './timeline-input.ts';

/**
 * A way to supply the scene as a timeline takes it. It counts from when every pump is set: its water
 * comes earlier, but gives less until then.
 * @param way one of `chooseSupply`'s
 * @param timesOrigin where the times of its steps come from; common practice where left out
 * @returns tasks [min], flow [gpm], time of full flow [min], on the zero of the rigs' arrivals
 * Source: the way's own steps.
 */
export function supplyOfWay(
  way: Pick<SupplyWay, 'time' | 'mostGpm'>,
  timesOrigin = usualTimesOrigin,
): TimelineSupply {
  return {
    tasks: way.time.steps.map(({ text, startMin, endMin, rigId }, at) => ({
      id: `step-${at + 1}`,
      what: `${text}.`,
      notBeforeMin: startMin,
      durationMin: endMin - startMin,
      after: [],
      ...(rigId !== undefined && { rigId }),
      origin: timesOrigin,
    })),
    flowGpm: way.mostGpm,
    atMin: way.time.fullAtMin,
  };
}
