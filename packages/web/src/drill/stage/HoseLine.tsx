import { useUnits } from '../../editing/use-units.ts';
import { hoseName, hoseSizeWords } from '../words.ts';
import type { HoseRun } from './layout-shape.ts';
import { useStage } from './stage-context.ts';

interface HoseLineProps {
  run: HoseRun;
  moving: boolean;
}

/** A hose as it looks: flat, filling, full, burst; water runs in it where it moves. */
export function HoseLine({ run, moving }: HoseLineProps) {
  const { d, widthPx, looks, middle } = run;
  const flat = looks === 'flat';
  const wet = looks === 'hard' || looks === 'soft';
  return (
    <g className={`stage-hose hose-${looks}`}>
      <path className="hose-skin" d={d} strokeWidth={flat ? widthPx * 0.7 : widthPx + 3} />
      {!flat && (
        <path
          className="hose-inside"
          d={d}
          strokeWidth={widthPx * (looks === 'soft' ? 0.6 : 1)}
          pathLength={looks === 'filling' ? 100 : undefined}
        />
      )}
      {wet && moving && (
        <path className="current" d={d} strokeWidth={Math.max(1.6, widthPx * 0.24)} />
      )}
      {looks === 'burst' && (
        <path
          className="burst"
          transform={`translate(${middle[0]} ${middle[1]})`}
          d="M-18 -6L-6 -6L-10 -20L2 -9L10 -22L9 -6L22 -10L11 1L20 12L6 8L2 20L-5 8L-18 12L-9 2Z"
        />
      )}
    </g>
  );
}

/** Where a hose goes that leaves the drawing. */
export function AwayWords({ run }: { run: HoseRun }) {
  const { scene } = useStage();
  const units = useUnits();
  const hose = scene.hoses.find(({ id }) => id === run.hose)!;
  const { away } = run;
  if (!away?.hasRoom) return null;
  const inward = away.anchor === 'end' ? -2 : 2;
  return (
    <g textAnchor={away.anchor} className="away">
      <text x={away.x + inward} y={away.y - run.widthPx / 2 - 8}>
        {away.anchor === 'end' ? `to ${away.to}` : `from ${away.to}`}
      </text>
      <text className="soft" x={away.x + inward} y={away.y + run.widthPx / 2 + 17}>
        {hoseSizeWords(hose, units)}
      </text>
    </g>
  );
}

/** Where hoses go that have no room to say it in the drawing. */
export function AwayList({ runs }: { runs: readonly HoseRun[] }) {
  const { scene } = useStage();
  const units = useUnits();
  const untold = runs.filter(({ away }) => away && !away.hasRoom);
  if (untold.length === 0) return null;
  return (
    <ul className="away-list">
      {untold.map(({ hose: id, away }) => {
        const hose = scene.hoses.find((one) => one.id === id)!;
        const name = hoseName(hose);
        const goes = away!.anchor === 'end' ? `to ${away!.to}` : `from ${away!.to}`;
        return (
          <li key={id}>
            {name !== hose.label && <b>{name}</b>} {goes}{' '}
            <span className="soft-text">{hoseSizeWords(hose, units)}</span>
          </li>
        );
      })}
    </ul>
  );
}
