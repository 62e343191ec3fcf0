import {
  hoseCatalogue,
  type Line,
  type Piece,
  type Plan,
  type PortRef,
  portsOf,
  splitPortRef,
} from '@plugside/fireground';
import { bleederBoreIn, handTimes, tankFillBoreIn } from './defaults.ts';
import type { SceneValve, ValveKind } from './scene.ts';

/** From this bore on a valve may not be worked in less than 3 s [in]. */
const largeBoreIn = 3.5;

/** Every valve, handle and bale of a plan, all shut. */
export function valvesOf(plan: Plan): SceneValve[] {
  const pieces: Piece[] = [...plan.hydrants, ...plan.rigs, ...plan.appliances, ...plan.nozzles];
  return pieces.flatMap((piece) => valvesOfPiece(plan, piece));
}

function valvesOfPiece(plan: Plan, piece: Piece): SceneValve[] {
  const valve = (
    name: string,
    kind: ValveKind,
    label: string,
    boreIn: number,
    hand: { travelS: number; turns?: number },
  ): SceneValve => ({
    id: `${piece.id}.${name}`,
    kind,
    label,
    pieceId: piece.id,
    opening: 0,
    boreIn,
    ...hand,
  });
  const gate = (name: string, kind: ValveKind, label: string, usualIn: number): SceneValve => {
    const boreIn = boreOf(plan, `${piece.id}.${name}`, usualIn);
    const hand = boreIn >= largeBoreIn ? handTimes.largeValve : handTimes.smallValve;
    return valve(name, kind, label, boreIn, hand);
  };
  if ('testGpm' in piece)
    return [
      valve('stem', 'hydrant stem', 'Hydrant stem', 5, handTimes.hydrantStem),
      ...portsOf(piece)
        .filter((port) => port.name.startsWith('side'))
        .map((port) =>
          valve(port.name, 'hydrant gate', `${port.label} gate`, 2.5, handTimes.hydrantGate),
        ),
    ];
  if ('waterElevationFt' in piece) return [];
  if ('role' in piece) {
    const ports = portsOf(piece);
    return [
      ...ports
        .filter((port) => port.direction === 'in')
        .flatMap((port) => [
          gate(port.name, 'intake', port.label, 5),
          valve(
            `${port.name}.bleeder`,
            'bleeder',
            `${port.label} bleeder`,
            bleederBoreIn,
            handTimes.bleeder,
          ),
        ]),
      ...ports
        .filter((port) => port.direction === 'out')
        .flatMap((port) => [
          gate(port.name, 'discharge', port.label, 2.5),
          ...(feedsAssistValve(plan, piece.id)
            ? [
                valve(
                  `${port.name}.bleeder`,
                  'bleeder',
                  `${port.label} drain`,
                  bleederBoreIn,
                  handTimes.bleeder,
                ),
              ]
            : []),
        ]),
      ...(piece.tankGal
        ? [
            valve('tankToPump', 'tank to pump', 'Tank to pump', 3, handTimes.smallValve),
            valve('tankFill', 'tank fill', 'Tank fill', tankFillBoreIn, handTimes.smallValve),
          ]
        : []),
    ];
  }
  if ('open' in piece) return [valve('bale', 'nozzle bale', 'Bale', 2, handTimes.bale)];
  switch (piece.kind) {
    case 'assist-valve':
      return [valve('handle', 'assist handle', 'Handle', 5, handTimes.assistHandle)];
    case 'wye':
    case 'manifold':
    case 'standpipe':
      return portsOf(piece)
        .filter((port) => port.direction === 'out')
        .map((port) => gate(port.name, 'appliance gate', port.label, 2.5));
    default:
      return [];
  }
}

/**
 * Whether an engine pumps into an assist valve. Its discharges have drains here: no nozzle or bleeder at the
 * other end lets that hose's pressure off.
 */
function feedsAssistValve(plan: Plan, rigId: string): boolean {
  return plan.lines.some(({ from, to }) => {
    const onto = splitPortRef(to);
    return splitPortRef(from).pieceId === rigId && onto.port === 'pump-discharge';
  });
}

/** The coupling of the hose that the plan has on a port [in]. */
function boreOf(plan: Plan, port: PortRef, usualIn: number): number {
  const line = plan.lines.find((one: Line) => one.from === port || one.to === port);
  return line ? hoseCatalogue[line.hose].couplingIn : usualIn;
}
