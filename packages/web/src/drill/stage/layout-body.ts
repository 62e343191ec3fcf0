import { type Piece, portsOf } from '@plugside/fireground';
import { type Making, ROW_PX } from './layout-making.ts';
import type { Pipe } from './layout-shape.ts';

/** A body under this has no room to spare between its gates. */
const NARROW_PX = 290;

/** An engine, or a fitting with gates: what comes in at the left, what goes out at the right. Returns its height [px]. */
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
  const drained = outs.some(({ ref }) => has(`${ref}.bleeder`));
  // On a phone drops and gates stand as close as fingers allow: their words keep clear of the pump.
  const isNarrow = drained && right - left < NARROW_PX;
  const dropPx = isNarrow ? 26 : 30;
  const gatePx = isNarrow ? 72 : 82;
  const gateRoomPx = drained ? gatePx + 2 : 34;
  const pump = {
    x: isRig ? (left + gatePx + 2 + right - gateRoomPx) / 2 : (left + right) / 2,
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
        x: left + dropPx,
        y: atY,
        pipe: 'down',
      });
    const gate = has(ref);
    const gateX = left + (isRig ? gatePx : 34);
    if (gate) layout.valves.push({ valve: ref, kind: 'intake', x: gateX, y: atY, pipe: 'across' });
    pipes.push({ d: `M${inX} ${atY}H${gateX}`, port: ref, part: 'port side' });
    const bend = `M${gateX} ${atY}C${gateX + 34} ${atY} ${pump.x - 34} ${pump.y} ${pump.x} ${pump.y}`;
    pipes.push({ d: bend, port: ref, part: 'inner side', ...(gate ? { valve: ref } : {}) });
  });
  outs.forEach(({ ref, name, label }, at) => {
    const atY = rowY(at, outs.length);
    const gate = has(ref);
    const gateX = right - gateRoomPx + 2;
    if (has(`${ref}.bleeder`))
      layout.valves.push({
        valve: `${ref}.bleeder`,
        kind: 'bleeder',
        x: right - dropPx,
        y: atY,
        pipe: 'down',
      });
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

const numberIn = (name: string) => /\d+$/.exec(name)?.[0] ?? '';
