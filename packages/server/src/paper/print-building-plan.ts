import { adjusted, type Choice, chooseSupply, rankingOf } from '@plugside/fireground';
import { buildingPlanFor, renderBuildingPlan } from '@plugside/paper';
import { everyRecord, situationAt } from '@plugside/records';
import type { RecordsAtHand } from '../threads/records-at-hand.ts';
import type { BuildingPlanBody } from './plan-requests.ts';
import { bytesOf, optionsFor } from './printed.ts';
import { refused, solved } from './refused.ts';

/** A building's water plan, chosen from everything on record. @throws NotFoundError, ProblemError 422 */
export async function printBuildingPlan(
  asked: BuildingPlanBody,
  atHand: RecordsAtHand,
): Promise<Uint8Array> {
  const { store, terrain } = atHand;
  const { units, way, demandGpm, demandMethod } = asked;
  const situation = await situationAt(store, asked.buildingId, {
    demandGpm,
    terrain: await terrain.current(),
  });
  if (!situation.situation) {
    const why = situation.notices.filter(({ level }) => level === 'error');
    throw refused(why.map(({ text }) => text).join(' '));
  }
  const { away, arrivesMin, marginShare, fireLinePdpPsi, first } = asked;
  const changes = {
    demandGpm: null,
    away,
    arrivesMin,
    ...(marginShare !== undefined && { marginShare }),
    ...(fireLinePdpPsi !== undefined && { fireLinePdpPsi }),
  };
  const coming = { ...situation, situation: adjusted(situation.situation, changes) };
  const plan = await solved(async () => {
    const ranking = rankingOf({ first });
    const choice = chooseSupply(coming.situation, { units, ranking });
    return buildingPlanFor({
      building: situation.building,
      situation: coming,
      choice,
      way: placeOf(choice, way),
      streets: await everyRecord(store, 'streets'),
      hydrants: await everyRecord(store, 'hydrants'),
      waters: await everyRecord(store, 'water-sources'),
      units,
      ...(demandMethod !== undefined && { demandMethod }),
      ...(demandMethod === undefined &&
        demandGpm !== undefined && { demandMethod: 'as asked for' }),
    });
  });
  return bytesOf(renderBuildingPlan(plan, await optionsFor(atHand, asked)));
}

/** Place of the way that is named; the first where none is. @throws ProblemError 422 */
function placeOf({ ways }: Choice, id: string | undefined): number {
  if (id === undefined) return 0;
  const place = ways.findIndex((way) => way.id === id);
  if (place >= 0) return place;
  throw refused('No such way is among those chosen from now. Choose anew, then print.');
}
