/** What the department's records make of a drill: an evolution on one of its hydrants, hose for a spare line. */
import {
  type DrillScene,
  isPlainText,
  sceneWithHydrant,
  withLinesAtScene,
  withSpareAttackLine,
} from '@plugside/drill';
import { type HoseAboard, nameOf, type Plan, parseHoseSize } from '@plugside/fireground';
import { planTest, type RecordStore } from '@plugside/records';
import { hydrantFromRecord, type PlanningNotice } from '@plugside/records/planning';
import { refused } from './refused.ts';

/**
 * An evolution on a hydrant of the records, by the flow test that plans take.
 * @throws ProblemError 422 where there is no such hydrant, where it has no usable test, no large outlet,
 *   or not the outlets that the evolution takes from
 */
export async function sceneOnHydrant(
  store: RecordStore,
  scene: DrillScene,
  hydrantId: string,
): Promise<DrillScene> {
  const record = await store.get('hydrants', hydrantId);
  const field = 'hydrantId';
  if (!record) {
    const remedy = 'Choose one that is there.';
    throw refused(field, hydrantId, 'the id of a hydrant among the records', remedy);
  }
  const notices: PlanningNotice[] = [];
  const test = await planTest(store, record);
  const { hydrant, steamer } = hydrantFromRecord('H1', record, test, 0, notices);
  if (!hydrant) {
    const why = notices.filter(({ level }) => level === 'error').map(({ text }) => text);
    throw refused(field, record.name, 'a hydrant with a usable flow test', why.join(' '));
  }
  if (!steamer) {
    const remedy = 'Enter its large outlet, or pick another hydrant.';
    throw refused(field, record.name, 'a hydrant with a large outlet, which hose lies on', remedy);
  }
  try {
    return { ...sceneWithHydrant(scene, hydrant), title: titleOf(scene.title, record.name) };
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw refused(field, record.name, 'a hydrant with the outlets that are used', error.message);
  }
}

const titleOf = (evolution: string, hydrant: string) => `${evolution}: ${hydrant}`.slice(0, 120);

/**
 * A plan with lines at the fire, where it has none, and a spare one, by the hose that the records have on the
 * engine at its scene.
 */
export async function withLinesOnRecord(
  store: RecordStore,
  laid: Plan,
): Promise<ReturnType<typeof withSpareAttackLine>> {
  const plan = withLinesAtScene(laid);
  const rig = plan.rigs.find(({ id }) => id === plan.scene);
  if (!rig) return { plan };
  const name = nameOf(rig);
  const { records } = isPlainText(name)
    ? await store.list('rigs', { where: { name }, limit: 2 })
    : { records: [] };
  // Of two rigs of one name nobody knows which is meant.
  const [record] = records.length === 1 ? records : [];
  const aboard = (record?.hose ?? []).flatMap(({ size, lengthFt }): HoseAboard[] => {
    const hose = parseHoseSize(size);
    return hose ? [{ hose, lengthFt }] : [];
  });
  return withSpareAttackLine(plan, aboard);
}
