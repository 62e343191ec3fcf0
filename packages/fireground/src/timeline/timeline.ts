import type { Notice } from '../questions/answers.ts';
import { formatNumber } from '../units/format-quantity.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { type Say, sayIn } from '../words/say.ts';
import { bridgeGpm } from './bridge-flow.ts';
import { flowAt, playTanks, type TankPlay } from './play-tanks.ts';
import { scheduleTasks } from './schedule.ts';
import { suppliedSteps, supplyThereMin } from './supply-steps.ts';
import { tankWords } from './tank-words.ts';
import type { TimelineAnswer, TimelineEvent } from './timeline-answer.ts';
import { checkTimelineInput, type TimelineInput } from './timeline-input.ts';

/** Margin under this [min] is told of: a hitch at the hydrant takes as long. Ours. */
const THIN_MARGIN_MIN = 1;

/** Farthest that the tanks alone are played [min]. */
const TANKS_UNTIL_MIN = 240;

/**
 * Tank water against supply, from the attack engine's first water on: what happens when, what is
 * left in its tank, when it runs dry, when the supply is there, and the flow that bridges the gap.
 * Supply goes before nursing tanks and these before the attack engine's own; no tank is refilled.
 * @param input flow steps [gpm], tanks [gal], what must be done for the supply [min], one zero for all
 * @param options `units` for the sentences
 * @returns events in order, tank level [gal], times [min], margin [min], flow [gpm]
 * Valid: water reaches the attack pump when the last task ends. The supply's flow is what it keeps up.
 * Outside: throws QuantityError.
 * Source: gallons over gpm; times are the department's own or as each task's origin says.
 */
export function timeline(
  input: TimelineInput,
  options: { units?: UnitSystem } = {},
): TimelineAnswer {
  checkTimelineInput(input);
  const { attackFlow, attackTank, nurseTanks = [], supply, untilMin = 60 } = input;
  const tasks = scheduleTasks(supply?.tasks ?? []);
  const steps = suppliedSteps(supply, tasks);
  const supplyAtMin = supplyThereMin(steps, attackFlow);
  const nurses = nurseTanks.map((nurse) => ({
    ...nurse,
    fromMin: nurse.arrivesMin + nurse.connectMin,
  }));
  // They give in the order in which their water comes.
  nurses.sort((one, two) => one.fromMin - two.fromMin);
  const play: TankPlay = {
    attackFlow,
    tankGal: attackTank.gallons,
    nurses,
    supply: steps,
    untilMin,
  };
  const played = playTanks(play);
  const tanksDryAtMin = playTanks({
    ...play,
    supply: steps.filter(({ atMin }) => supplyAtMin !== null && atMin < supplyAtMin),
    untilMin: TANKS_UNTIL_MIN,
  }).runsDryAtMin;
  const marginMin =
    supplyAtMin === null || tanksDryAtMin === null ? null : tanksDryAtMin - supplyAtMin;
  const told = nurses.map(({ rigId, fromMin }, at) => ({ rigId, fromMin, ...played.nurses[at]! }));
  const answer: TimelineAnswer = {
    events: [],
    tank: played.tank,
    tasks,
    supply: steps,
    supplyAtMin,
    runsDryAtMin: played.runsDryAtMin,
    tanksDryAtMin,
    marginMin,
    bridgeGpm: bridgeGpm(play, supplyAtMin),
    deliveredGal: played.deliveredGal,
    shortGal: played.shortGal,
    nurseTanks: told,
    text: '',
    notices: [],
  };
  const say = sayIn(options.units ?? 'us');
  answer.events = eventsOf(input, answer, say);
  // A supply that is a little too small drains the tank past what is shown.
  const inTheEnd = playTanks({ ...play, untilMin: Math.max(untilMin, TANKS_UNTIL_MIN) });
  answer.text = tankWords(input, { ...answer, runsDryAtMin: inTheEnd.runsDryAtMin }, say);
  answer.notices = noticesOf(input, answer, say);
  return answer;
}

function eventsOf(input: TimelineInput, answer: TimelineAnswer, say: Say): TimelineEvent[] {
  const { attackFlow, attackTank, nurseTanks = [], arrivals = [], untilMin = 60 } = input;
  const events: TimelineEvent[] = arrivals.map(({ rigId, name, atMin }) => ({
    atMin,
    kind: 'arrival',
    text: `${name ?? rigId} arrives.`,
    rigId,
  }));
  for (const { atMin, flowGpm, what } of attackFlow) {
    const lines = what ? `${what}: ` : '';
    events.push({
      atMin,
      kind: 'flow',
      text: `${lines}${say.full(flowGpm, 'flow')} from the lines.`,
      rigId: attackTank.rigId,
    });
  }
  for (const task of answer.tasks) {
    events.push({
      atMin: task.startMin,
      untilMin: task.endMin,
      kind: 'task',
      text: task.what,
      ...(task.rigId !== undefined && { rigId: task.rigId }),
      ...(task.origin && { origin: task.origin }),
    });
  }
  for (const nurse of nurseTanks) {
    const name = nurse.name ?? nurse.rigId;
    const told = answer.nurseTanks.find(({ rigId }) => rigId === nurse.rigId)!;
    events.push(
      { atMin: nurse.arrivesMin, kind: 'arrival', text: `${name} arrives.`, rigId: nurse.rigId },
      {
        atMin: told.fromMin,
        kind: 'nursing begins',
        text: `${name} gives its tank of ${say.full(nurse.gallons, 'volume')} through a line.`,
        rigId: nurse.rigId,
        ...(nurse.connectOrigin && { origin: nurse.connectOrigin }),
      },
    );
    if (told.emptyAtMin !== null) {
      events.push({
        atMin: told.emptyAtMin,
        kind: 'nurse tank empty',
        text: `${name}'s tank is empty.`,
        rigId: nurse.rigId,
      });
    }
  }
  if (answer.runsDryAtMin !== null) {
    events.push({
      atMin: answer.runsDryAtMin,
      kind: 'attack tank dry',
      text: `${attackTank.name ?? attackTank.rigId}'s tank is dry: the lines lack water.`,
      rigId: attackTank.rigId,
    });
  }
  for (const { atMin, flowGpm, what } of answer.supply) {
    events.push({
      atMin,
      kind: 'supply',
      text: `Water from ${what ?? 'the supply'}: ${say.full(flowGpm, 'flow')}${what ? ' in all' : ''}.`,
      rigId: attackTank.rigId,
    });
  }
  // Those at one time stay in the order above.
  return events.filter(({ atMin }) => atMin <= untilMin).sort((one, two) => one.atMin - two.atMin);
}

function noticesOf(input: TimelineInput, answer: TimelineAnswer, say: Say): Notice[] {
  const notices: Notice[] = [];
  const { marginMin, supplyAtMin, tanksDryAtMin } = answer;
  const minutes = (value: number) => `${formatNumber(Math.abs(value), 1)} min`;
  if (marginMin !== null && marginMin < 0) {
    const bridge =
      answer.bridgeGpm === null
        ? ''
        : ` The tanks would hold ${say.full(answer.bridgeGpm, 'flow')} until then.`;
    notices.push({
      level: 'caution',
      text: `The tanks are dry ${minutes(marginMin)} before the supply is there.${bridge} Crews inside must know before it happens.`,
    });
  } else if (marginMin !== null && marginMin < THIN_MARGIN_MIN) {
    notices.push({
      level: 'caution',
      text: `Only ${minutes(marginMin)} are left between the supply and dry tanks. One hitch takes as long.`,
    });
  }
  if (supplyAtMin === null && tanksDryAtMin !== null) {
    notices.push({
      level: 'caution',
      text: `No supply is planned; the tanks last ${minutes(tanksDryAtMin)}.`,
    });
  }
  const mostGpm = Math.max(0, ...input.attackFlow.map(({ flowGpm }) => flowGpm));
  const suppliedGpm = flowAt(answer.supply, Number.POSITIVE_INFINITY);
  if (input.supply && suppliedGpm < mostGpm) {
    notices.push({
      level: 'caution',
      text: `The supply gives ${say.full(suppliedGpm, 'flow')}; the lines take up to ${say.full(mostGpm, 'flow')}.`,
    });
  }
  const reckoned = answer.tasks.some(({ origin }) => origin?.kind === 'common practice');
  if (reckoned) {
    notices.push({
      level: 'fact',
      text: 'Some times are common practice without a source: no published measurements of laying and hooking up were found. Time your own crews.',
    });
  }
  return notices;
}
