/** The rows of sources and of nozzles in a role's drawing. Each returns its height [px]. */
import { portsOf } from '@plugside/fireground';
import { type Making, ROW_PX } from './layout-making.ts';
import type { Pipe } from './layout-shape.ts';

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
