/** What one thing going wrong does to a supply that is set. */
import { upstreamOf, wetPieces } from '../network/downstream.ts';
import { sharedMains } from '../network/shared-mains.ts';
import type { Line, Plan, Rig } from '../plan/plan.ts';
import { describeLine, nameOf, portOf, splitPortRef } from '../plan/ports.ts';
import { hydrantsNotKnownApart, sharingPlans } from '../questions/main-range.ts';
import { settingsFor } from '../questions/settings-for.ts';
import { SupplySearch } from '../questions/supply-search.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { limitWords } from '../words/answer.ts';
import { sayIn } from '../words/say.ts';
import { supplyAsSet } from './as-set.ts';
import type { Mishap, SupplyWay } from './choice.ts';
import { listed } from './leg.ts';
import { ONE_LINE_GPM, SLACK_GPM, WEAKER } from './mishap-measures.ts';
import { shuttleMishaps } from './shuttle-mishaps.ts';

/** Where a pump starts that is set anew; the search moves it [psi]. */
const READY_PSI = 100;

interface Fault {
  what: string;
  /** The plan with it, nobody having touched anything. */
  plan: Plan;
  /** The plan as crews would make it before they set the pumps anew; the same where left out. */
  mended?: Plan;
  demandGpm: number;
  /** The pump that is lost. */
  lost?: string;
  /** What is left and what to do. */
  note: string;
}

/**
 * One mishap at a time, each with what the scene still gets while nobody touches a pump, and after
 * the pumps are set anew: a pump stops, a line is lost, a hydrant gives a fifth less, one more hand
 * line is wanted.
 *
 * As they stand: the attack engine takes no more than leaves its intake its least, so other limits
 * may be passed; those are listed. Of a tender shuttle: a tender drops out, filling or the road is
 * slower; beside hose each is counted with what the other brings.
 * @throws RangeError for a demand that is not above 0; NetworkError where the plan cannot be solved
 */
export function mishaps(
  of: Plan | Pick<SupplyWay, 'plan' | 'shuttle'>,
  demandGpm: number,
  options: { units?: UnitSystem } = {},
): Mishap[] {
  if (!(demandGpm > 0) || !Number.isFinite(demandGpm)) {
    throw new RangeError(`demandGpm is ${demandGpm}; allowed: above 0. Give the flow wanted.`);
  }
  const { plan, shuttle } = 'lines' in of ? { plan: of, shuttle: undefined } : of;
  const units = options.units ?? 'us';
  if (!shuttle) return plan ? planMishaps(plan, demandGpm, units) : [];
  const besideGpm = plan ? Math.max(0, demandGpm - shuttle.drawGpm) : 0;
  const asked = { wantedGpm: demandGpm, besideGpm, moreGpm: ONE_LINE_GPM };
  const hauled = shuttleMishaps(shuttle, asked, units);
  if (!plan || besideGpm < SLACK_GPM) return hauled;
  const more = sayIn(units).full(shuttle.drawGpm, 'flow');
  return [
    ...planMishaps(plan, besideGpm, units)
      .slice(0, -1)
      .map((one) => ({
        ...one,
        flowGpm: one.flowGpm + shuttle.drawGpm,
        resetGpm: one.resetGpm + shuttle.drawGpm,
        wantedGpm: demandGpm,
        text: `${one.text} The shuttle gives ${more} beside it.`,
      })),
    ...hauled,
  ];
}

/** What can go wrong with hose and pumps; more wanted comes last. */
function planMishaps(plan: Plan, demandGpm: number, units: UnitSystem): Mishap[] {
  return [
    ...pumpFaults(plan, demandGpm),
    ...lineFaults(plan, demandGpm, units),
    ...hydrantFaults(plan, demandGpm),
    ...mainFaults(plan, demandGpm),
    moreWanted(plan, demandGpm, units),
  ].map((fault) => mishapOf(fault, units));
}

function mishapOf(fault: Fault, units: UnitSystem): Mishap {
  const say = sayIn(units);
  const { demandGpm } = fault;
  const { flowGpm, limits } = supplyAsSet(fault.plan, demandGpm);
  const mended = withPumpsReady(fault.mended ?? fault.plan, fault.lost);
  const mostGpm = new SupplySearch(mended).greatestGpm();
  const answer = settingsFor(mended, demandGpm, { units, steady: true });
  const passed = limits.filter((limit) => limit.passed && limit.weight === 'hard');
  // Water that draws a main or an intake under its least is not to be counted on.
  const over = flowGpm >= 1 && passed.length > 0;
  // Leaving the pumps as they stand is one of the ways to set them.
  const resetGpm = Math.max(over ? 0 : flowGpm, Math.min(demandGpm, mostGpm));
  const stillMeets = resetGpm >= demandGpm - SLACK_GPM;
  const pumped = fault.plan.rigs.some(
    ({ id, setting }) => id !== fault.plan.scene && setting.mode !== 'idle',
  );
  const comes =
    flowGpm < 1
      ? 'no water comes'
      : `${say.full(flowGpm, 'flow')} comes${pumped ? ' as the pumps are set' : ''}`;
  const beyond = over
    ? `, past ${listed(passed.map((limit) => limitWords(fault.plan, limit, units)))}`
    : '';
  const anew =
    over || resetGpm > flowGpm + SLACK_GPM
      ? `, ${say.full(resetGpm, 'flow')}${over ? ' within every limit' : ''} with them set anew`
      : '';
  const end = stillMeets
    ? 'The demand is met.'
    : `${say.full(demandGpm - resetGpm, 'flow')} short: shut lines to match, and bring another supply.`;
  return {
    what: fault.what,
    flowGpm,
    resetGpm,
    wantedGpm: demandGpm,
    stillMeets,
    shortfallGpm: stillMeets ? 0 : demandGpm - resetGpm,
    text: `${fault.what}: ${comes}${beyond}${anew}. ${fault.note}${fault.note ? ' ' : ''}${end}`,
    orders: answer.orders,
    passed,
  };
}

/** The plan with pumps that stand by set to pump: whoever sets the pumps anew may use them. */
function withPumpsReady(plan: Plan, lost: string | undefined): Plan {
  return {
    ...plan,
    rigs: plan.rigs.map((rig) =>
      rig.id !== plan.scene && rig.id !== lost && rig.setting.mode === 'idle'
        ? { ...rig, setting: { mode: 'governed', pdpPsi: READY_PSI } }
        : rig,
    ),
  };
}

/** Every pump before the scene in turn. */
function pumpFaults(plan: Plan, demandGpm: number): Fault[] {
  return plan.rigs
    .filter((rig) => rig.id !== plan.scene && rig.setting.mode !== 'idle')
    .map((rig) => {
      const stopped: Plan = {
        ...plan,
        rigs: plan.rigs.map((one) =>
          one.id === rig.id ? { ...one, setting: { mode: 'idle' } } : one,
        ),
      };
      const fault: Fault = {
        what: `${nameOf(rig)} stops pumping${ofSource(plan, rig.id)}`,
        plan: stopped,
        demandGpm,
        lost: rig.id,
        note: '',
      };
      const valve = valveOf(plan, rig);
      const suctions = suctionsOf(plan, rig);
      if (suctions.length > 0) {
        // It loses its prime: whatever pumps behind it draws nothing through it.
        fault.plan = withoutDry({
          ...stopped,
          lines: stopped.lines.map((line) =>
            suctions.includes(line.id) ? { ...line, valve: 'shut' } : line,
          ),
        });
        fault.note = 'Nothing lifts the water without it.';
      } else if (valve) {
        fault.note = "The assist valve's clapper opens: water goes on at hydrant pressure.";
        const shut = withoutBooster(stopped, rig, valve);
        const better =
          new SupplySearch(shut).greatestGpm() > new SupplySearch(stopped).greatestGpm();
        if (better) fault.mended = shut;
      } else {
        fault.note = 'Water passes through its pump, or take it out of the line.';
      }
      return fault;
    });
}

function valveOf(plan: Plan, rig: Rig): string | undefined {
  const fed = plan.lines.find((line) => {
    const to = splitPortRef(line.to);
    return splitPortRef(line.from).pieceId === rig.id && to.port === 'pump-discharge';
  });
  return fed && splitPortRef(fed.to).pieceId;
}

/** Handle back at hydrant, the booster's lines shut. */
function withoutBooster(plan: Plan, rig: Rig, valveId: string): Plan {
  return {
    ...plan,
    appliances: plan.appliances.map((one) =>
      one.id === valveId && one.kind === 'assist-valve' ? { ...one, handle: 'hydrant' } : one,
    ),
    lines: plan.lines.map((line) => (touches(line, rig.id) ? { ...line, valve: 'shut' } : line)),
  };
}

function touches(line: Line, id: string): boolean {
  return [line.from, line.to].some((ref) => splitPortRef(ref).pieceId === id);
}

/** Lines through which a rig drafts. */
function suctionsOf(plan: Plan, rig: Rig): string[] {
  return plan.lines
    .filter(
      (line) =>
        splitPortRef(line.to).pieceId === rig.id &&
        plan.drafts.some(({ id }) => id === splitPortRef(line.from).pieceId),
    )
    .map(({ id }) => id);
}

/** Without the pumps that no water comes to any more, where the scene has other water: they judge nothing. */
function withoutDry(plan: Plan): Plan {
  const wet = wetPieces(plan);
  if (!wet.has(plan.scene)) return plan;
  const dry = new Set(plan.rigs.filter(({ id }) => !wet.has(id)).map(({ id }) => id));
  if (dry.size === 0) return plan;
  const gone = (ref: string) => dry.has(splitPortRef(ref).pieceId);
  return {
    ...plan,
    rigs: plan.rigs.filter(({ id }) => !dry.has(id)),
    lines: plan.lines.filter(({ from, to }) => !gone(from) && !gone(to)),
  };
}

/** ", water from H-330": of several sources the ones that a piece's water comes from, where it is not told already. */
function ofSource(plan: Plan, pieceId: string, told = ''): string {
  const sources = [...plan.hydrants, ...plan.drafts];
  if (sources.length < 2) return '';
  const before = upstreamOf(plan, pieceId);
  const own = sources.filter(({ id }) => before.has(id) || id === pieceId);
  const names = own.map(nameOf);
  const known = names.every((name) => told.includes(name));
  return own.length > 0 && own.length < sources.length && !known
    ? `, water from ${listed(names)}`
    : '';
}

/** Every line of the lay in turn: hose into the scene, and between pumps; hookups at a source left out. */
function lineFaults(plan: Plan, demandGpm: number, units: UnitSystem): Fault[] {
  const rigs = new Set(plan.rigs.map(({ id }) => id));
  const lay = plan.lines.filter((line) => {
    const from = splitPortRef(line.from).pieceId;
    const to = splitPortRef(line.to).pieceId;
    return (
      line.valve !== 'shut' &&
      (to === plan.scene || (rigs.has(from) && rigs.has(to) && from !== plan.scene))
    );
  });
  return lay.map((line) => {
    const one = line.count > 1;
    const lost: Partial<Line> = one ? { count: line.count - 1 } : { valve: 'shut' };
    const others = one || lay.some((other) => other !== line && other.to.startsWith(intoOf(line)));
    return {
      what: `${one ? 'One of the lines' : 'The line'} ${lineWords(plan, line, lay, units)} is lost${ofSource(plan, splitPortRef(line.from).pieceId, describeLine(plan, line))}`,
      plan: withoutDry({
        ...plan,
        lines: plan.lines.map((other) => (other.id === line.id ? { ...other, ...lost } : other)),
      }),
      demandGpm,
      note: others
        ? 'Shut it at its upstream end first: until then it runs the others dry.'
        : 'Shut it at its upstream end.',
    };
  });
}

function intoOf({ to }: Line): string {
  return `${splitPortRef(to).pieceId}.`;
}

/** Told apart by size and outlet where two run between the same ends. */
function lineWords(plan: Plan, line: Line, among: readonly Line[], units: UnitSystem): string {
  const words = describeLine(plan, line);
  const twins = among.filter((other) => describeLine(plan, other) === words);
  if (twins.length < 2) return words;
  const size = formatHoseSize(line.hose, units);
  const outlet = portOf(plan, line.from)?.port.label.toLowerCase() ?? '';
  return `${words} (${size}, ${outlet})`;
}

/** Every main in turn: one hydrant, or those that share it with all their tests. */
function hydrantFaults(plan: Plan, demandGpm: number): Fault[] {
  const shared = sharedMains(plan);
  const sharing = new Set(shared.flatMap(({ hydrants }) => hydrants.map(({ id }) => id)));
  const share = `${Math.round(WEAKER * 100)} %`;
  return [
    ...plan.hydrants
      .filter(({ id }) => !sharing.has(id))
      .map((hydrant) => ({
        what: `${nameOf(hydrant)} gives ${share} less than its test`,
        plan: weakened(plan, [hydrant.id]),
        demandGpm,
        note: '',
      })),
    ...shared.map(({ hydrants, test }) => ({
      what: `The main of ${listed(hydrants.map(nameOf))} gives ${share} less than ${test ? 'their test together' : 'their tests'}`,
      plan: weakened(
        plan,
        hydrants.map(({ id }) => id),
      ),
      demandGpm,
      note: '',
    })),
  ];
}

function weakened(plan: Plan, ids: readonly string[]): Plan {
  const less = <T extends { testGpm: number }>(test: T): T => ({
    ...test,
    testGpm: test.testGpm * (1 - WEAKER),
  });
  return {
    ...plan,
    hydrants: plan.hydrants.map((one) => (ids.includes(one.id) ? less(one) : one)),
    ...(plan.groupTests && {
      groupTests: plan.groupTests.map((one) =>
        ids.every((id) => one.hydrants.includes(id)) ? less(one) : one,
      ),
    }),
  };
}

/** Hydrants of unknown main that turn out to share one; of several mains the one that leaves least. */
function mainFaults(plan: Plan, demandGpm: number): Fault[] {
  const open = sharingPlans(plan);
  if (open.length === 0) return [];
  const most = (one: Plan) => new SupplySearch(one).greatestGpm();
  const [worst] = open
    .map((one) => ({ plan: one, mostGpm: open.length > 1 ? most(one) : 0 }))
    .sort((one, two) => one.mostGpm - two.mostGpm);
  return [
    {
      what: `${listed(hydrantsNotKnownApart(plan).map(nameOf))} share a main`,
      plan: worst!.plan,
      demandGpm,
      note: 'Each draws the other down.',
    },
  ];
}

function moreWanted(plan: Plan, demandGpm: number, units: UnitSystem): Fault {
  const line = sayIn(units).full(ONE_LINE_GPM, 'flow');
  return {
    what: `One more hand line (${line}) is wanted`,
    plan,
    demandGpm: demandGpm + ONE_LINE_GPM,
    note: '',
  };
}
