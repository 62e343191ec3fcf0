import {
  addNode,
  type PortRef,
  pumpLinkOf,
  type Rig,
  splitPortRef,
  tankLoss,
} from '@plugside/fireground';
import { bleederBoreIn, tankFillBoreIn } from './defaults.ts';
import { type Making, openLoss, valveIndex, valveOn } from './making.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import { boreK } from './valve-loss.ts';

/** A pump cannot pull its intake under this: 20 inHg of vacuum where it lifts from a tank or open water … */
const leastDraftIntakePsi = -9.8;
/** … and next to nothing where soft hose feeds it, which goes flat. Both ours. */
const leastHoseIntakePsi = -2;

/** An engine: each intake and discharge behind its valve, its pump, its tank, bleeders and relief. */
export function addRig(making: Making, rig: Rig): void {
  const { scene, state, draft, valved, used } = making;
  const { id, elevationFt } = rig;
  const intake = addNode(draft, `${id}:intake`, elevationFt);
  const discharge = addNode(draft, `${id}:discharge`, elevationFt);
  let lifts = false;
  for (let n = 1; n <= rig.intakes; n++) {
    const port = `${id}.intake${n}`;
    if (!used(port)) continue;
    const node = addNode(draft, port, elevationFt);
    const loss = rig.intakeLoss ?? { lossPsi: 0, atGpm: 1000 };
    draft.links.push({ kind: 'loss', id: `${id}:intake${n}`, from: node, to: intake, ...loss });
    valveOn(making, `${id}:intake${n}`, port);
    openToAir(making, `${port}:bleeder`, node, `${port}.bleeder`, 0.9 * boreK(bleederBoreIn));
    if (fromOpenWater(scene, state, port)) lifts = true;
  }
  for (let n = 1; n <= rig.discharges; n++) {
    const port = `${id}.discharge${n}`;
    if (!used(port)) continue;
    const node = addNode(draft, port, elevationFt);
    draft.links.push(openLoss(`${id}:discharge${n}`, discharge, node));
    valveOn(making, `${id}:discharge${n}`, port);
    // Its drain, where it has one.
    openToAir(making, `${port}:bleeder`, node, `${port}.bleeder`, 0.9 * boreK(bleederBoreIn));
  }
  const pump = pumpLinkOf(rig, false);
  if (rig.tankGal) {
    const valve = valveIndex(scene, `${id}.tankToPump`);
    if (state.valves[valve]!.opening > 0 || state.valves[valve]!.target > 0) {
      lifts = true;
      const tank = addNode(draft, `${id}:tank`, elevationFt, { fixedPsi: 0 });
      const link = `${id}:tankToPump`;
      draft.links.push({
        kind: 'loss',
        id: link,
        from: tank,
        to: intake,
        ...tankLoss,
        check: true,
      });
      valveOn(making, link, `${id}.tankToPump`);
    }
    const fill = valveIndex(scene, `${id}.tankFill`);
    if (state.valves[fill]!.opening > 0 || state.valves[fill]!.target > 0)
      openToAir(making, `${id}:tankFill`, discharge, `${id}.tankFill`, 0.7 * boreK(tankFillBoreIn));
  }
  const floor = lifts ? leastDraftIntakePsi : leastHoseIntakePsi;
  pump.protectIntakePsi = Math.max(floor, pump.protectIntakePsi ?? floor);
  // Built to be governed or throttled, as its operator changes it.
  if (pump.pdpPsi === undefined) pump.pdpPsi = 0;
  pump.speedFraction = 1;
  pump.idle = false;
  draft.links.push(pump);
  if (rig.intakeReliefPsi !== undefined)
    draft.links.push({
      kind: 'relief',
      id: `${id}:relief`,
      from: intake,
      settingPsi: rig.intakeReliefPsi,
      risePsi: 10,
      atGpm: 500,
    });

  function openToAir(
    { scene: { valves } }: Making,
    link: string,
    node: string,
    valveId: string,
    openK: number,
  ): void {
    const valve = valves.findIndex((one) => one.id === valveId);
    const now = state.valves[valve];
    if (!now || (now.opening === 0 && now.target === 0)) return;
    draft.links.push({ kind: 'nozzle', id: link, from: node, k: openK });
    valved.push({ link, valve, baseK: 0, boreIn: valves[valve]!.boreIn, openK });
  }
}

/** Whether the hose on an intake comes from open water. */
function fromOpenWater(scene: DrillScene, state: DrillState, port: PortRef): boolean {
  return state.hoses.some(
    (hose) =>
      hose.to.port === port &&
      hose.from.port !== null &&
      scene.plan.drafts.some((one) => one.id === splitPortRef(hose.from.port!).pieceId),
  );
}
