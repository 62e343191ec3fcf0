import type { SourcePart, SupplyWay } from '../supply/choice.ts';
import { usualTimesOrigin } from './lay-tasks.ts';
import type { TimelineSource, TimelineSupply } from './timeline-input.ts';

/**
 * A way to supply the scene as a timeline takes it: each source as its water comes. A source that
 * runs on hydrant pressure until its pump is set gives that much until then, and no more than its
 * part of the way's most.
 * @param way one of `chooseSupply`'s
 * @param timesOrigin where the times of its steps come from; common practice where left out
 * @returns tasks [min], flow [gpm] in all and by source, time of full flow [min], on the zero of the
 *   rigs' arrivals
 * Source: the way's own steps and parts.
 */
export function supplyOfWay(
  way: Pick<SupplyWay, 'time' | 'mostGpm' | 'parts'>,
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
    ...(way.parts && { sources: way.parts.map(asItComes) }),
  };
}

function asItComes(part: SourcePart): TimelineSource {
  const { sourceName: name, startGpm, mostGpm, waterAtMin, fullAtMin } = part;
  const full = { atMin: fullAtMin, flowGpm: mostGpm };
  if (startGpm <= 0 || waterAtMin >= fullAtMin) return { name, flow: [full] };
  const first = { atMin: waterAtMin, flowGpm: Math.min(startGpm, mostGpm) };
  return { name, flow: [first, { ...full, what: `${name} boosted` }] };
}
