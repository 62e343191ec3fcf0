/** What an instructor can make go wrong in a scene. */
import {
  areEqualPorts,
  type DrillScene,
  type Fault,
  hoseWords,
  pieceName,
  portName,
} from '@plugside/drill';

/** Each kind of fault without what every fault has. */
type Wrong = Fault extends infer F ? (F extends Fault ? Omit<F, 'id' | 'atTick'> : never) : never;

export interface FaultChoice {
  /** What is hit: `Supply hose`. */
  piece: string;
  /** One button for each. */
  options: { key: string; text: string; fault: Wrong }[];
}

const WEAK_SHARES = [0.8, 0.5, 0.25] as const;
const KINK_FACTOR = 10;

/** Everything that can go wrong, from the water to the fire. */
export function faultChoices(scene: DrillScene): FaultChoice[] {
  const { plan } = scene;
  const hydrants = plan.hydrants.map(({ id }): FaultChoice => {
    const options = WEAK_SHARES.map((share) => ({
      key: `weak-${id}-${share}`,
      text: `${share * 100} % of its test`,
      fault: { kind: 'hydrant weak' as const, hydrant: id, share },
    }));
    return { piece: `${pieceName(scene, id)} weaker than its record`, options };
  });
  const valves = plan.appliances
    .filter((one) => one.kind === 'assist-valve')
    .map(
      ({ id }): FaultChoice => ({
        piece: pieceName(scene, id),
        options: [
          {
            key: `clapper-${id}`,
            text: 'Clapper sticks where it stands',
            fault: { kind: 'clapper stuck', valve: id },
          },
          {
            key: `clapper-open-${id}`,
            text: 'Clapper sticks open',
            fault: { kind: 'clapper stuck open', valve: id },
          },
        ],
      }),
    );
  const pumps = scene.pumps.map(
    ({ rigId }): FaultChoice => ({
      piece: pieceName(scene, rigId),
      options: [
        { key: `dies-${rigId}`, text: 'Engine dies', fault: { kind: 'pump dies', rig: rigId } },
      ],
    }),
  );
  const hoses = scene.hoses.map(
    ({ id }): FaultChoice => ({
      piece: hoseWords(scene, id),
      options: [
        {
          key: `kink-${id}`,
          text: 'Kinks',
          fault: { kind: 'hose kinked', hose: id, factor: KINK_FACTOR },
        },
        { key: `burst-${id}`, text: 'Bursts', fault: { kind: 'hose burst', hose: id } },
        ...wrongPorts(scene, id),
      ],
    }),
  );
  const spare: FaultChoice[] =
    scene.spareNozzle === undefined
      ? []
      : [
          {
            piece: 'A line that lies ready',
            options: [
              {
                key: `called-${scene.spareNozzle}`,
                text: 'Extra line called',
                fault: { kind: 'line called', nozzle: scene.spareNozzle },
              },
            ],
          },
        ];
  return [...hydrants, ...valves, ...pumps, ...hoses, ...spare];
}

/**
 * Where a hurried hand puts a hose that lies ready: on the port of the same piece that another such
 * hose belongs on. Hose that is coupled from the start has water in it, and nobody finds it elsewhere.
 */
function wrongPorts(scene: DrillScene, id: string): FaultChoice['options'] {
  const loose = scene.hoses.flatMap(({ id: hose, from, to }) =>
    (['from', 'to'] as const).flatMap((end) => {
      const { port, plannedPort } = { from, to }[end];
      return port === undefined ? [{ hose, end, own: plannedPort }] : [];
    }),
  );
  const pieceOf = (port: string) => port.slice(0, port.indexOf('.'));
  return loose
    .filter(({ hose }) => hose === id)
    .flatMap(({ end, own }) => {
      const other = loose.find(
        (one) => pieceOf(one.own) === pieceOf(own) && !areEqualPorts(one.own, own),
      );
      if (!other) return [];
      const port = other.own;
      return [
        {
          key: `port-${id}-${port}`,
          text: `On ${portName(scene, port)}`,
          fault: { kind: 'wrong port' as const, hose: id, end, port },
        },
      ];
    });
}

/** Whether two faults hit the same thing in the same way. */
export function sameFault(a: Wrong, b: Wrong): boolean {
  const target = (one: Wrong) =>
    'hydrant' in one
      ? one.hydrant
      : 'valve' in one
        ? one.valve
        : 'hose' in one
          ? one.hose
          : 'nozzle' in one
            ? one.nozzle
            : one.rig;
  return a.kind === b.kind && target(a) === target(b);
}

/**
 * The fault as it is armed.
 * @param nowTick makes its id its own
 * @param atTick when it strikes; left out: now
 */
export function armed(
  choice: FaultChoice['options'][number],
  nowTick: number,
  atTick?: number,
): Fault {
  const plain = choice.key.replaceAll(/[^A-Za-z0-9]+/g, '-').slice(0, 34);
  const fault = { ...choice.fault, id: `${plain}-${nowTick}` } as Fault;
  return atTick === undefined ? fault : { ...fault, atTick };
}
