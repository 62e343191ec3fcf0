import type { ValveKind } from '@plugside/drill';
import { nameOf, pieceOf } from '@plugside/fireground';
import { useMemo, useRef } from 'react';
import { Button } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import { useWidth } from '../../lay/use-drawing.ts';
import { hoseCaption, hoseName } from '../words.ts';
import { AwayList, AwayWords, HoseLine } from './HoseLine.tsx';
import { layoutStage, leastWidthPx } from './layout.ts';
import type { EndSpot, PortSpot, StageLayout, ValveSpot } from './layout-shape.ts';
import { endMark, gearMark, governorMark, portMark, valveMark } from './marks.ts';
import { PieceFigure } from './PieceFigure.tsx';
import { SpotRefusal } from './SpotRefusal.tsx';
import { useStage } from './stage-context.ts';
import { openingWord, valveName } from './valve-words.ts';
import { moves } from './water-seen.ts';

/** What stands in front of a role, to be touched: hose ends, ports, valves, pumps. */
export function StageDrawing({ all }: { all: boolean }) {
  const { scene, view } = useStage();
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  // Valves move several times a second; what stands where depends on none of that.
  const openKey = view.valves.map(({ opening }) => (opening > 0 ? 1 : 0)).join('');
  const endKey = view.hoseEnds.map(({ port, at, looks }) => `${port}|${at}|${looks}`).join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the keys stand for what of the view counts
  const layout = useMemo(
    () => (width > 0 ? layoutStage(scene, view, Math.max(width, leastWidthPx), all) : null),
    [scene, view.role, width, all, openKey, endKey],
  );
  return (
    <>
      <div className="stage-drawing" data-scrolls={width < leastWidthPx || undefined} ref={frame}>
        {layout && (
          <>
            <svg
              width={layout.width}
              height={layout.height}
              viewBox={`0 0 ${layout.width} ${layout.height}`}
              aria-hidden="true"
            >
              {layout.hoses.map((run) => (
                <HoseLine key={run.hose} run={run} moving={moves(view, run.hose)} />
              ))}
              {layout.pieces.map((spot) => (
                <PieceFigure key={spot.id} spot={spot} />
              ))}
              {layout.hoses.map((run) => (
                <AwayWords key={run.hose} run={run} />
              ))}
            </svg>
            <Spots layout={layout} />
            <SpotRefusal layout={layout} />
          </>
        )}
      </div>
      {layout && <AwayList runs={layout.hoses} />}
    </>
  );
}

function Spots({ layout }: { layout: StageLayout }) {
  return (
    <>
      {layout.pieces.map(
        ({ id, pump }) => pump && <PumpButton key={id} rig={id} x={pump.x} y={pump.y} />,
      )}
      {layout.valves.map((spot) => (
        <ValveButton key={spot.valve} spot={spot} />
      ))}
      {layout.ports.map((spot) => (
        <PortButton key={spot.port} spot={spot} />
      ))}
      {layout.ends
        .filter(({ port }) => port === null)
        .map((spot) => (
          <LooseEnd key={`${spot.hose}:${spot.end}`} spot={spot} />
        ))}
    </>
  );
}

function usePieceName(id: string): string {
  const { scene } = useStage();
  const piece = pieceOf(scene.plan, id);
  return piece ? nameOf(piece) : id;
}

function PumpButton({ rig, x, y }: { rig: string; x: number; y: number }) {
  const { view, marks, picked, pick } = useStage();
  const name = usePieceName(rig);
  const pump = view.pumps.find(({ rigId }) => rigId === rig);
  if (!pump) return null;
  const set =
    pump.setting.mode === 'governed'
      ? 'governor'
      : pump.setting.mode === 'throttled'
        ? 'throttle'
        : 'idle';
  return (
    <Button
      className="spot spot-pump"
      style={{ left: x, top: y }}
      data-marked={marks.has(gearMark(rig)) || marks.has(governorMark(rig)) || undefined}
      data-picked={(picked?.kind === 'pump' && picked.rig === rig) || undefined}
      data-runs={pump.inGear || undefined}
      aria-label={`${name}, pump ${pump.inGear ? 'in gear' : 'out of gear'}, by ${set}: show its controls`}
      onPress={() => pick({ kind: 'pump', rig })}
    >
      <svg viewBox="-32 -32 64 64" aria-hidden="true">
        <circle className="pump-ring" r="27" />
        <path
          className={pump.inGear ? 'pump-rotor turning' : 'pump-rotor'}
          d="M0 -18Q14 -6 0 0Q-14 6 0 18M-18 0Q-6 -14 0 0Q6 14 18 0"
        />
      </svg>
    </Button>
  );
}

/** Valves whose place does not say what they are. */
const captionWords: Readonly<Partial<Record<ValveKind, string>>> = {
  'tank fill': 'fill ',
  'assist handle': 'handle: ',
};

function ValveButton({ spot }: { spot: ValveSpot }) {
  const { view, marks, picked, pick } = useStage();
  const valve = view.valves.find(({ id }) => id === spot.valve);
  const piece = usePieceName(valve?.pieceId ?? '');
  if (!valve) return null;
  const word = openingWord(valve.opening, valve.kind);
  const turn =
    (spot.pipe === 'across' ? 90 : 0) * (1 - valve.opening) +
    (spot.pipe === 'down' ? 90 * valve.opening : 0);
  return (
    <Button
      className={`spot spot-valve spot-${valve.kind.replaceAll(' ', '-')}`}
      style={{ left: spot.x, top: spot.y }}
      data-marked={marks.has(valveMark(spot.valve)) || undefined}
      data-picked={(picked?.kind === 'valve' && picked.valve === spot.valve) || undefined}
      data-open={valve.opening > 0.01 || undefined}
      aria-label={`${valveName(valve, piece)}: ${word}. Show its control`}
      onPress={() => pick({ kind: 'valve', valve: spot.valve })}
    >
      <svg viewBox="-22 -22 44 44" aria-hidden="true">
        {valve.kind === 'bleeder' ? (
          <path className="valve-drop" d="M0 -11Q9 2 9 5A9 9 0 0 1 -9 5Q-9 2 0 -11Z" />
        ) : valve.kind === 'hydrant stem' ? (
          <g transform={`rotate(${valve.opening * 360 * 3})`}>
            <path className="valve-body" d="M0 -16L13.9 -8V8L0 16L-13.9 8V-8Z" />
            <path className="valve-bore" d="M0 -9V9" />
          </g>
        ) : valve.kind === 'assist handle' ? (
          <g transform={`rotate(${valve.opening * 90})`}>
            <circle className="valve-body" r="9" />
            <path className="valve-lever" d="M0 0H17" />
            <circle className="valve-knob" cx="17" r="4" />
          </g>
        ) : (
          <g transform={`rotate(${turn})`}>
            <circle className="valve-body" r="15" />
            <path className="valve-bore" d="M-10 0H10" />
          </g>
        )}
      </svg>
      {valve.kind !== 'bleeder' && (
        <span className="spot-caption">
          {captionWords[valve.kind] ?? ''}
          {word}
        </span>
      )}
    </Button>
  );
}

function PortButton({ spot }: { spot: PortSpot }) {
  const units = useUnits();
  const { scene, view, act, marks, picked, pick } = useStage();
  const port = view.ports.find((one) => one.port === spot.port);
  if (!port) return null;
  const holds = picked?.kind === 'end' ? picked : null;
  const end = view.hoseEnds.find((one) => one.port === spot.port);
  const hose = scene.hoses.find(({ id }) => id === end?.hose);
  const held = holds && scene.hoses.find(({ id }) => id === holds.hose);
  const takes = holds !== null && port.free;
  const state = hose ? `${hoseName(hose)} on it, ${end!.looks}` : port.free ? 'free' : 'taken';
  return (
    <Button
      className="spot spot-port"
      style={{ left: spot.x, top: spot.y }}
      data-marked={
        marks.has(portMark(spot.port)) ||
        (end !== undefined && marks.has(endMark(end.hose, end.end))) ||
        undefined
      }
      data-takes={takes || undefined}
      data-picked={(picked?.kind === 'port' && picked.port === spot.port) || undefined}
      data-coupled={hose !== undefined || undefined}
      data-looks={end?.looks}
      aria-label={
        held && takes ? `Couple ${hoseName(held)} to ${port.label}` : `${port.label}: ${state}`
      }
      onPress={() => {
        if (holds) act({ do: 'couple', hose: holds.hose, end: holds.end, port: spot.port });
        else pick({ kind: 'port', port: spot.port });
      }}
    >
      <i className="port-ring">{spot.short}</i>
      <span className="spot-caption">{hose ? hoseCaption(hose, units) : spot.caption}</span>
    </Button>
  );
}

function LooseEnd({ spot }: { spot: EndSpot }) {
  const units = useUnits();
  const { scene, marks, picked, pick } = useStage();
  const hose = scene.hoses.find(({ id }) => id === spot.hose)!;
  const held = picked?.kind === 'end' && picked.hose === spot.hose && picked.end === spot.end;
  const name = hoseName(hose);
  return (
    <Button
      className="spot spot-end"
      style={{ left: spot.x, top: spot.y }}
      data-marked={marks.has(endMark(spot.hose, spot.end)) || undefined}
      data-picked={held || undefined}
      aria-label={`${name}, loose end ${spot.end === 'from' ? 'nearer the water' : 'nearer the fire'}: ${held ? 'in hand, now choose a port' : 'take in hand'}`}
      aria-pressed={held}
      onPress={() => pick(held ? null : { kind: 'end', hose: spot.hose, end: spot.end })}
    >
      <i className="coupling" />
      <span className="spot-caption">{name === hose.label ? units.hose(hose.hose) : name}</span>
    </Button>
  );
}
