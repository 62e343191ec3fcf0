import { nameOf, pieceOf, splitPortRef } from '@plugside/fireground';
import type { PieceSpot } from './layout-shape.ts';
import { useStage } from './stage-context.ts';
import { waterAt } from './water-seen.ts';

/** A piece as drawn: its body, what runs inside it, its name. */
export function PieceFigure({ spot }: { spot: PieceSpot }) {
  const { scene } = useStage();
  const piece = pieceOf(scene.plan, spot.id);
  const name = piece ? nameOf(piece) : spot.id;
  switch (spot.kind) {
    case 'hydrant':
      return <Hydrant spot={spot} name={name} />;
    case 'assist valve':
      return <AssistValve spot={spot} />;
    case 'nozzle':
      return <Nozzle spot={spot} name={name} />;
    case 'draft':
      return <OpenWater spot={spot} name={name} />;
    default:
      return <Body spot={spot} name={name} />;
  }
}

interface FigureProps {
  spot: PieceSpot;
  name: string;
}

function Hydrant({ spot, name }: FigureProps) {
  const { view } = useStage();
  const { x, y, width: w, height: h } = spot;
  const stem = view.valves.find(({ id }) => id === `${spot.id}.stem`);
  const wet = (stem?.opening ?? 0) > 0;
  const half = w / 2;
  return (
    <g className="stage-piece">
      <Pipes spot={spot} />
      <path className="pipe-casing" d={`M${x} ${y + 50}H${x + half + 12}`} strokeWidth="22" />
      <path
        className={wet ? 'pipe-water' : 'pipe-dry'}
        d={`M${x} ${y + 50}H${x + half + 14}`}
        strokeWidth="16"
      />
      <path
        className="figure-body"
        d={`M${x - half} ${y + h - 14}V${y + 22}q0 -22 ${half} -22t${half} 22V${y + h - 14}Z`}
      />
      {wet && (
        <path
          className="chamber-water"
          d={`M${x - half + 7} ${y + h - 20}V${y + 24}q0 -16 ${half - 7} -16t${half - 7} 16V${y + h - 20}Z`}
        />
      )}
      <path className="figure-body" d={`M${x - half - 8} ${y + h - 14}h${w + 16}v10h${-w - 16}Z`} />
      <path className="figure-line" d={`M${x - half} ${y + 26}H${x + half}`} />
      <circle className="figure-body" cx={x} cy={y + 50} r="11" />
      <text className="piece-name apart" x={x - half - 8} y={y + h + 14}>
        {name}
      </text>
    </g>
  );
}

function AssistValve({ spot }: { spot: PieceSpot }) {
  const { scene, view } = useStage();
  const { x, y, width: w, height: h } = spot;
  const piece = pieceOf(scene.plan, spot.id);
  const handle = view.valves.find(({ id }) => id === `${spot.id}.handle`);
  const boost = (handle?.opening ?? 0) > 0.01;
  const hydrantId = piece && 'on' in piece && piece.on ? splitPortRef(piece.on).pieceId : '';
  const live = view.valves.some(({ id, opening }) => id === `${hydrantId}.stem` && opening > 0);
  const wet = live || waterAt(view, `${spot.id}.supply`);
  // A supply hose that was coupled at the start has left no cap behind.
  const supply = `${spot.id}.supply`;
  const pours =
    live &&
    view.ports.some(({ port, hose }) => port === supply && hose === null) &&
    scene.hoses.some(({ from, to }) => from.port === supply || to.port === supply);
  const middle = y + h / 2;
  const [suctionX, dischargeX] = w > 150 ? [x + 40, x + w - 40] : [x + 30, x + w - 30];
  const foot = y + h + 14;
  const water = (on: boolean) => (on ? 'pipe-water' : 'pipe-dry');
  return (
    <g className="stage-piece">
      <path
        className="figure-body"
        d={`M${x - 10} ${middle - 15}H${x}Q${x} ${y} ${x + 14} ${y}H${x + w - 14}Q${x + w} ${y} ${x + w} ${middle - 15}H${x + w + 10}V${middle + 15}H${x + w}Q${x + w} ${y + h} ${dischargeX + 15} ${y + h}V${foot}H${dischargeX - 15}V${y + h}H${suctionX + 15}V${foot}H${suctionX - 15}V${y + h}Q${x} ${y + h} ${x} ${middle + 15}H${x - 10}Z`}
      />
      <path
        className={water(waterAt(view, `${spot.id}.pump-discharge`))}
        d={`M${dischargeX} ${middle}V${foot - 1}`}
        strokeWidth="14"
      />
      <path
        className={water(wet && boost)}
        d={`M${suctionX} ${middle}V${foot - 1}`}
        strokeWidth="14"
      />
      <path className={water(wet)} d={`M${x - 11} ${middle}H${x + w + 12}`} strokeWidth="18" />
      {pours && (
        <path
          className="stream"
          d={`M${x + w + 52} ${middle - 10}l60 -8M${x + w + 52} ${middle - 2}l74 8M${x + w + 52} ${middle + 6}l62 30`}
        />
      )}
      <text className="piece-name" x={x + 6} y={y - 12}>
        {piece ? nameOf(piece).replace('Hydrant assist', 'Assist') : spot.id}
      </text>
    </g>
  );
}

function Nozzle({ spot, name }: FigureProps) {
  const { view } = useStage();
  const { x, y } = spot;
  const middle = y + 32;
  const seen = view.streams?.find(({ nozzle }) => nozzle === spot.id)?.stream;
  const flows = seen !== undefined && seen !== 'shut' && seen !== 'none';
  return (
    <g className="stage-piece">
      <path className="pipe-casing" d={`M${x - 32} ${middle}H${x + 60}`} strokeWidth="16" />
      <path
        className={waterAt(view, `${spot.id}.inlet`) ? 'pipe-water' : 'pipe-dry'}
        d={`M${x - 32} ${middle}H${x + 60}`}
        strokeWidth="10"
      />
      <path
        className="figure-body"
        d={`M${x + 54} ${middle - 10}L${x + 92} ${middle - 16}V${middle + 16}L${x + 54} ${middle + 10}Z`}
      />
      {flows && (
        <path
          className="stream"
          d={
            seen === 'weak'
              ? // It falls short and droops.
                `M${x + 98} ${middle - 5}q16 0 26 18M${x + 98} ${middle}q12 0 20 18M${x + 98} ${middle + 5}q8 2 12 16`
              : `M${x + 98} ${middle - 9}l46 -15M${x + 98} ${middle - 3}l54 -5M${x + 98} ${middle + 3}l54 5M${x + 98} ${middle + 9}l46 15`
          }
        />
      )}
      <text className="piece-name" x={x - 60} y={y - 6}>
        {name}
      </text>
    </g>
  );
}

function OpenWater({ spot, name }: FigureProps) {
  const { x, y } = spot;
  return (
    <g className="stage-piece">
      <path className="surface" d={`M${x - 50} ${y}q10 -8 20 0t20 0t20 0t20 0t20 0`} />
      <path className="surface" d={`M${x - 40} ${y + 14}q10 -8 20 0t20 0t20 0t20 0`} />
      <text className="piece-name" x={x - 50} y={y - 18}>
        {name}
      </text>
    </g>
  );
}

function Body({ spot, name }: FigureProps) {
  const { view } = useStage();
  const { x, y, width: w, height: h, tank, kind } = spot;
  const seen = view.pumps.find(({ rigId }) => rigId === spot.id);
  const share = seen?.tankCapacityGal ? (seen.tankGal ?? 0) / seen.tankCapacityGal : 0;
  return (
    <g className="stage-piece">
      {kind === 'rig' && (
        <>
          <circle className="figure-body" cx={x + w * 0.2} cy={y + h} r="15" />
          <circle className="figure-body" cx={x + w * 0.82} cy={y + h} r="15" />
        </>
      )}
      <rect className="figure-body" x={x} y={y} width={w} height={h} rx="8" />
      <text className="piece-name" x={x + 14} y={y + 24}>
        {name}
      </text>
      {tank && (
        <>
          {[
            { valve: 'tankToPump', x: tank.x + 34 },
            { valve: 'tankFill', x: tank.x + tank.width - 34 },
          ].map((pipe) => (
            <TankPipe key={pipe.valve} spot={spot} tank={tank} pipe={pipe} />
          ))}
          <rect className="tank" {...tank} />
          <rect
            className="tank-water"
            x={tank.x}
            width={tank.width}
            y={tank.y + tank.height * (1 - share)}
            height={tank.height * share}
          />
        </>
      )}
      <Pipes spot={spot} />
      {tank && (
        <text className="tank-name" x={tank.x + tank.width / 2} y={tank.y + 23} textAnchor="middle">
          tank
        </text>
      )}
    </g>
  );
}

interface TankPipeProps {
  spot: PieceSpot;
  tank: NonNullable<PieceSpot['tank']>;
  pipe: { valve: string; x: number };
}

/** Between tank and pump: water stands in it down to a shut valve. */
function TankPipe({ spot, tank, pipe }: TankPipeProps) {
  const { view } = useStage();
  const valve = view.valves.find(({ id }) => id === `${spot.id}.${pipe.valve}`);
  const open = (valve?.opening ?? 0) > 0;
  const seen = view.pumps.find(({ rigId }) => rigId === spot.id);
  const holds = (seen?.tankGal ?? 0) > 0;
  const runs = view.gauges.some(({ id, value }) => id === `${spot.id}.discharge` && value > 2);
  const valveY = tank.y + 68;
  const pumpY = spot.pump?.y ?? valveY;
  const upper = pipe.valve === 'tankToPump' ? holds : open && runs;
  const lower = pipe.valve === 'tankToPump' ? open && holds : runs;
  return (
    <>
      <path
        className="pipe-casing"
        d={`M${pipe.x} ${tank.y + tank.height}V${pumpY}`}
        strokeWidth="12"
      />
      <path
        className={upper ? 'pipe-water' : 'pipe-dry'}
        d={`M${pipe.x} ${tank.y + tank.height}V${valveY}`}
        strokeWidth="7"
      />
      <path
        className={lower ? 'pipe-water' : 'pipe-dry'}
        d={`M${pipe.x} ${valveY}V${pumpY}`}
        strokeWidth="7"
      />
    </>
  );
}

/** Pipes between ports, valves and pump, with the water that stands in them. */
function Pipes({ spot }: { spot: PieceSpot }) {
  const { view } = useStage();
  const pumpWet = spot.pump
    ? view.gauges.some(({ id, value }) => id === `${spot.id}.discharge` && value > 2)
    : spot.pipes.some(({ port }) => port !== undefined && waterAt(view, port));
  const hydrantWet = view.valves.some(({ id, opening }) => id === `${spot.id}.stem` && opening > 0);
  return spot.pipes.map(({ d, port, part, valve }) => {
    const gate = view.valves.find(({ id }) => id === valve);
    const gateOpen = !gate || gate.opening > 0;
    const behind = spot.kind === 'hydrant' ? hydrantWet : pumpWet;
    const wet =
      part === 'inner side'
        ? gate
          ? gateOpen && (pumpWet || waterAt(view, port!))
          : behind
        : waterAt(view, port!) || (gate !== undefined && gateOpen && behind);
    return (
      <g key={d}>
        <path className="pipe-casing" d={d} strokeWidth="12" />
        <path className={wet ? 'pipe-water' : 'pipe-dry'} d={d} strokeWidth="7" />
      </g>
    );
  });
}
