import { type DrillScene, type HoseState, hoseWords } from '@plugside/drill';
import { useUnits } from '../../../editing/use-units.ts';
import { hoseCaption } from '../../words.ts';
import type { WholeFrame } from './whole-frame.ts';

interface WholeHoseProps {
  scene: DrillScene;
  hose: HoseState;
  all: readonly HoseState[];
  /** Of its water [0 … 1]. */
  share: number;
  frame: WholeFrame;
  faulty: boolean;
  /** Words are drawn over all the lines: one that runs under them would hide them. */
  part: 'line' | 'words';
}

/** One hose of the whole drawing: where it lies, what is in it, what flows. */
export function WholeHose({ scene, hose, all, share, frame, faulty, part }: WholeHoseProps) {
  const units = useUnits();
  const { id, from, to, phase, flowGpm } = hose;
  const piece = scene.hoses.find((one) => one.id === id)!;
  const caption = hoseCaption(piece, units);
  // One that is named by where it runs would be too long beside what it runs between.
  const known = hoseWords(scene, id) !== piece.label;
  const ends = (one: HoseState) => [one.from.at, one.to.at].sort().join(' ');
  const beside = all.filter((one) => ends(one) === ends(hose));
  const lane = beside.findIndex((one) => one.id === id);
  if (from.at === to.at) return null;
  const meeting = (at: string) => all.filter((one) => one.from.at === at || one.to.at === at);
  const crowded = meeting(to.at).length > meeting(from.at).length ? 'to' : 'from';
  const run = frame.between(from.at, to.at, { lane, lanes: beside.length, crowded });
  const loose = from.port === null || to.port === null;
  const flows = phase === 'full' && Math.abs(flowGpm) >= 1;
  const looks = phase === 'burst' ? 'burst' : loose ? 'loose' : flows ? 'flows' : phase;
  const percent = Math.round(share * 100);
  const words =
    looks === 'burst'
      ? 'burst'
      : loose
        ? 'loose'
        : looks === 'filling'
          ? percent < 1
            ? 'empty'
            : `filling ${percent} %`
          : units.text(Math.abs(flowGpm) < 0.5 ? 0 : Math.abs(flowGpm), 'flow');
  return (
    <g className="whole-hose" data-looks={looks} data-faulty={faulty || undefined}>
      {part === 'line' ? (
        <path d={run.d} />
      ) : (
        // The paper first under both rows, so that no line is seen between them or through them.
        (['paper', undefined] as const).map((part) => (
          <g key={part ?? 'ink'} className={part}>
            <text x={run.x} y={run.y - 14} textAnchor={run.anchor}>
              {frame.narrow || !known ? caption : hoseWords(scene, id)}
            </text>
            <text className="figures" x={run.x} y={run.y} textAnchor={run.anchor}>
              {words}
            </text>
          </g>
        ))
      )}
    </g>
  );
}
