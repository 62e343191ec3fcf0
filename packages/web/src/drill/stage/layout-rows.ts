/** The rows of a role's drawing: sources, fittings and engines, nozzles. Each returns its height [px]. */
import type { DrillScene, ValveView } from '@plugside/drill';
import { type Piece, portsOf } from '@plugside/fireground';
import type { Pipe, StageLayout } from './layout-shape.ts';

export interface Making {
  scene: DrillScene;
  valves: readonly ValveView[];
  /** Ports to draw. */
  shown: ReadonlySet<string>;
  width: number;
  /** Room at either side where hose comes in and leaves. */
  marginPx: number;
  layout: StageLayout;
}

const ROW_PX = 66;

/** Hydrants side by side, each with the assist valve on its steamer. */
export function sourceRow(making: Making, y: number): number {
  const { scene, layout, shown, marginPx } = making;
  const sources = [...scene.plan.hydrants, ...scene.plan.drafts];
  let x = Math.max(8, marginPx - 40);
  let height = 0;
  let count = 0;
  for (const source of sources) {
    if (!inReach(making, source.id)) continue;
    if (!('testGpm' in source)) {
      x = draftAt(making, source.id, x, y);
      height = Math.max(height, 150);
      continue;
    }
    const sides = portsOf(source).filter(
      ({ name }) => name.startsWith('side') && shown.has(`${source.id}.${name}`),
    );
    const middle = x + (sides.length > 0 ? 126 : 46);
    const steamerY = y + 96;
    const pipes: Pipe[] = [];
    layout.valves.push({
      valve: `${source.id}.stem`,
      kind: 'hydrant stem',
      x: middle,
      y: y + 24,
      pipe: 'across',
    });
    sides.forEach(({ name }, at) => {
      const port = `${source.id}.${name}`;
      const sideY = y + 76 + at * ROW_PX;
      layout.ports.push({
        port,
        x: middle - 104,
        y: sideY,
        out: [-1, 0],
        short: name.replace('side', 'S'),
        caption: `side ${at + 1}`,
      });
      layout.valves.push({
        valve: port,
        kind: 'hydrant gate',
        x: middle - 52,
        y: sideY,
        pipe: 'across',
      });
      pipes.push({ d: `M${middle - 52} ${sideY}H${middle - 104}`, port, part: 'port side' });
      pipes.push({ d: `M${middle} ${sideY}H${middle - 52}`, port, part: 'inner side' });
    });
    layout.pieces.push({
      id: source.id,
      kind: 'hydrant',
      x: middle,
      y: y + 46,
      width: 52,
      height: 148,
      pipes,
    });
    const valve = scene.plan.appliances.find(
      (one) => one.kind === 'assist-valve' && one.on === `${source.id}.steamer`,
    );
    if (valve && inReach(making, valve.id)) {
      x = assistValveAt(making, valve.id, middle + 34, steamerY) + 70;
    } else if (shown.has(`${source.id}.steamer`)) {
      const port = `${source.id}.steamer`;
      layout.ports.push({
        port,
        x: middle + 64,
        y: steamerY,
        out: [1, 0],
        short: '',
        caption: 'steamer',
      });
      x = middle + 64 + 70;
    } else x = middle + 100;
    height = Math.max(height, 204);
    count += 1;
  }
  // Hose of the first ones leaves along the foot of the others.
  return height + (count > 1 ? 74 : 0);
}

function assistValveAt(making: Making, id: string, left: number, middleY: number): number {
  const { layout } = making;
  const roomy = making.marginPx > 0;
  const width = roomy ? 190 : 136;
  const suctionX = left + (roomy ? 40 : 30);
  const dischargeX = left + width - (roomy ? 40 : 30);
  layout.pieces.push({
    id,
    kind: 'assist valve',
    x: left,
    y: middleY - 32,
    width,
    height: 64,
    pipes: [],
  });
  layout.valves.push({
    valve: `${id}.handle`,
    kind: 'assist handle',
    x: suctionX,
    y: middleY,
    pipe: 'down',
  });
  layout.ports.push(
    {
      port: `${id}.supply`,
      x: left + width + 28,
      y: middleY,
      out: [1, 0],
      short: '',
      caption: 'supply',
    },
    {
      port: `${id}.pump-suction`,
      x: suctionX,
      y: middleY + 62,
      out: [0, 1],
      short: '',
      caption: 'suction',
    },
    {
      port: `${id}.pump-discharge`,
      x: dischargeX,
      y: middleY + 62,
      out: [0, 1],
      short: '',
      caption: 'discharge',
    },
  );
  return left + width + 28;
}

function draftAt({ layout }: Making, id: string, x: number, y: number): number {
  layout.pieces.push({
    id,
    kind: 'draft',
    x: x + 60,
    y: y + 90,
    width: 90,
    height: 50,
    pipes: [],
  });
  layout.ports.push({
    port: `${id}.water`,
    x: x + 130,
    y: y + 90,
    out: [1, 0],
    short: '',
    caption: 'strainer',
  });
  return x + 200;
}

/** An engine, or a fitting with gates: what comes in at the left, what goes out at the right. */
export function bodyRow(making: Making, piece: Piece, y: number): number {
  const { layout, shown, marginPx, width, valves } = making;
  const isRig = 'role' in piece;
  const has = (valve: string) => valves.some(({ id }) => id === valve);
  const ports = portsOf(piece)
    .map((port) => ({ ...port, ref: `${piece.id}.${port.name}` }))
    .filter(({ ref }) => shown.has(ref));
  const ins = ports.filter(({ direction }) => direction === 'in');
  const outs = ports.filter(({ direction }) => direction === 'out');
  const rows = Math.max(ins.length, outs.length, isRig ? 2 : 1);
  const tank = isRig && has(`${piece.id}.tankToPump`);
  const headPx = 44 + (tank ? 112 : 0);
  const height = headPx + rows * ROW_PX + 12;
  const inX = marginPx + 26;
  const standOffPx = marginPx > 0 ? 54 : 34;
  const left = inX + standOffPx;
  const right = Math.min(width - marginPx - 26 - standOffPx, left + (isRig ? 520 : 240));
  const outX = right + standOffPx;
  const pump = {
    x: isRig ? (left + 84 + right - 34) / 2 : (left + right) / 2,
    y: y + headPx + (rows * ROW_PX) / 2,
  };
  const pipes: Pipe[] = [];
  const rowY = (at: number, of: number) => y + headPx + ((rows - of) / 2 + at + 0.5) * ROW_PX - 8;
  ins.forEach(({ ref, name, label }, at) => {
    const atY = rowY(at, ins.length);
    layout.ports.push({
      port: ref,
      x: inX,
      y: atY,
      out: [-1, 0],
      short: numberIn(name),
      caption: label.toLowerCase().replace(/ \d+$/, ''),
    });
    if (has(`${ref}.bleeder`))
      layout.valves.push({
        valve: `${ref}.bleeder`,
        kind: 'bleeder',
        x: left + 30,
        y: atY,
        pipe: 'down',
      });
    const gate = has(ref);
    const gateX = left + (isRig ? 82 : 34);
    if (gate) layout.valves.push({ valve: ref, kind: 'intake', x: gateX, y: atY, pipe: 'across' });
    pipes.push({ d: `M${inX} ${atY}H${gateX}`, port: ref, part: 'port side' });
    const bend = `M${gateX} ${atY}C${gateX + 34} ${atY} ${pump.x - 34} ${pump.y} ${pump.x} ${pump.y}`;
    pipes.push({ d: bend, port: ref, part: 'inner side', ...(gate ? { valve: ref } : {}) });
  });
  outs.forEach(({ ref, name, label }, at) => {
    const atY = rowY(at, outs.length);
    const gate = has(ref);
    const gateX = right - 32;
    layout.ports.push({
      port: ref,
      x: outX,
      y: atY,
      out: [1, 0],
      short: numberIn(name),
      caption: label.toLowerCase().replace(/ \d+$/, ''),
    });
    if (gate)
      layout.valves.push({
        valve: ref,
        kind: isRig ? 'discharge' : 'appliance gate',
        x: gateX,
        y: atY,
        pipe: 'across',
      });
    const bend = `M${pump.x} ${pump.y}C${pump.x + 34} ${pump.y} ${gateX - 34} ${atY} ${gateX} ${atY}`;
    pipes.push({ d: bend, port: ref, part: 'inner side' });
    pipes.push({
      d: `M${gateX} ${atY}H${outX}`,
      port: ref,
      part: 'port side',
      ...(gate ? { valve: ref } : {}),
    });
  });
  const spot = {
    id: piece.id,
    kind: isRig ? ('rig' as const) : ('fitting' as const),
    x: left,
    y,
    width: right - left,
    height,
    pipes,
  };
  if (!isRig) layout.pieces.push(spot);
  else if (tank) {
    const tankTop = y + 36;
    layout.valves.push(
      {
        valve: `${piece.id}.tankToPump`,
        kind: 'tank to pump',
        x: pump.x - 30,
        y: tankTop + 68,
        pipe: 'down',
      },
      {
        valve: `${piece.id}.tankFill`,
        kind: 'tank fill',
        x: pump.x + 30,
        y: tankTop + 68,
        pipe: 'down',
      },
    );
    layout.pieces.push({
      ...spot,
      pump,
      tank: { x: pump.x - 64, y: tankTop, width: 128, height: 36 },
    });
  } else layout.pieces.push({ ...spot, pump });
  return height + (isRig ? 22 : 8);
}

/** A nozzle: hose from the left, its bale, its stream to the right. */
export function nozzleRow(making: Making, id: string, y: number): number {
  const { layout, marginPx, width } = making;
  const middleY = y + 58;
  const inX = marginPx > 0 ? Math.round(width * 0.36) : 128;
  layout.ports.push({
    port: `${id}.inlet`,
    x: inX,
    y: middleY,
    out: [-1, 0],
    short: '',
    caption: 'inlet',
  });
  layout.valves.push({
    valve: `${id}.bale`,
    kind: 'nozzle bale',
    x: inX + 74,
    y: middleY,
    pipe: 'across',
  });
  layout.pieces.push({
    id,
    kind: 'nozzle',
    x: inX + 44,
    y: y + 26,
    width: 120,
    height: 64,
    pipes: [],
  });
  return 112;
}

function inReach({ valves, shown }: Making, id: string): boolean {
  return (
    valves.some(({ pieceId }) => pieceId === id) ||
    [...shown].some((port) => port.startsWith(`${id}.`))
  );
}

const numberIn = (name: string) => /\d+$/.exec(name)?.[0] ?? '';
