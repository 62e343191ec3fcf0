/** `npm run prove [count] [first seed]`: solves random networks by the hundred thousand and checks every answer. */
import { prove } from './prove.ts';

const [count = 100_000, first = 1] = process.argv.slice(2).map(Number);
const start = performance.now();
const proof = prove(first, count);
const seconds = (performance.now() - start) / 1000;

console.log(`${proof.networks} random networks, seeds ${first} to ${first + count - 1}`);
console.log(`${proof.failures.length} wrong or not settled`);
console.log(
  `${proof.refused} rightly refused: shut valves leave a demand with no water, or no loss between two held pressures`,
);
console.log(`${proof.slow} took more than ${proof.quickLimit} passes, so the slow method`);
console.log(`${(proof.passes / proof.networks).toFixed(1)} passes each, ${seconds.toFixed(1)} s`);
for (const failure of proof.failures.slice(0, 40)) console.log(`  ${failure}`);
process.exitCode = proof.failures.length === 0 ? 0 : 1;
