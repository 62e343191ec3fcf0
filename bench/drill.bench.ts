/**
 * What a step of a live drill takes: one evolution from first to last tick, then fifty rooms side by side
 * at twenty steps a second. The solve alone, of the same network as it stands at the end, is the floor.
 */
import { createDrill, type Drill, evolutionOf, playedBy, playedRoles, step } from '@plugside/drill';
import { formatSeconds, measure, printTable } from './measure.ts';

const ROOMS = 50;
const RATE_HZ = 20;
const TICKS = 1500;

const scene = evolutionOf('boost through valve')!.scene();
const acts = (drill: Drill) => playedRoles.flatMap((role) => playedBy(role, scene, drill.state));

/** Seconds of each step of one drill, played by the computer. */
function stepsOf(drill: Drill): number[] {
  const seconds: number[] = [];
  for (let tick = 0; tick < TICKS; tick++) {
    const submitted = acts(drill);
    const from = performance.now();
    step(drill, submitted);
    seconds.push((performance.now() - from) / 1000);
  }
  return seconds;
}

function spread(name: string, seconds: number[]): void {
  const sorted = [...seconds].sort((a, b) => a - b);
  const at = (share: number) => formatSeconds(sorted[Math.floor(share * (sorted.length - 1))]!);
  console.log(
    `  ${name.padEnd(44)}median ${at(0.5).padStart(8)}  95 % ${at(0.95).padStart(8)}  99 % ${at(0.99).padStart(8)}  most ${at(1).padStart(8)}`,
  );
}

// Once to warm up.
stepsOf(createDrill(scene, 1));
console.log('\nA step of the boost evolution, played to its end');
spread(`${TICKS} steps of one drill`, stepsOf(createDrill(scene, 2)));
const moving = createDrill(scene, 3);
for (let tick = 0; tick < TICKS; tick++) step(moving, acts(moving));
let psi = 100;
spread(
  'every step with a governor on the move',
  Array.from({ length: TICKS }, (_, tick) => {
    if (tick % 20 === 0) psi = psi === 100 ? 140 : 100;
    const from = performance.now();
    step(
      moving,
      tick % 20 === 0
        ? [{ role: 'hydrant operator', action: { do: 'set governor', rig: 'B1', pdpPsi: psi } }]
        : [],
    );
    return (performance.now() - from) / 1000;
  }),
);

const network = moving.net.network!;
printTable('The floor (ratio: to a solve from nothing)', [
  measure('solve from nothing', () => {
    network.forget();
    return network.solve().iterations;
  }),
  measure('solve from the last answer', () => network.solve({ warm: true }).iterations),
]);

const rooms = Array.from({ length: ROOMS }, (_, seed) => createDrill(scene, seed));
const rounds: number[] = [];
for (let tick = 0; tick < TICKS; tick++) {
  const submitted = rooms.map(acts);
  const from = performance.now();
  rooms.forEach((drill, at) => {
    step(drill, submitted[at]!);
  });
  rounds.push((performance.now() - from) / 1000);
}
console.log(`\n${ROOMS} drills in one process, one step each`);
spread('a round', rounds);
const mean = rounds.reduce((sum, one) => sum + one, 0) / rounds.length;
console.log(`  ${(100 * mean * RATE_HZ).toFixed(1)} % of one core at ${RATE_HZ} steps a second`);
