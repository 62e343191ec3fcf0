/** What the documents need of a department's records, read once for any number of them. */
import { type DepartmentValues, hoseCatalogue } from '@plugside/fireground';
import { type Kind, recordSchemas, type Stored } from '@plugside/records/model';
import {
  assistValveOf,
  departmentCoefficients,
  departmentLimits,
  hoseTestsAhead,
  type PickedRig,
  type PlanningNotice,
  withHoseInService,
} from '@plugside/records/planning';
import { supplySizes } from '../pump-chart/usual-lines.ts';

/** Where records are read from: what a store of them offers, and no more. */
export interface RecordReader {
  all<K extends Kind>(kind: K): AsyncIterable<Stored<K>>;
}

export interface DepartmentRecords {
  rigs: Stored<'rigs'>[];
  pumpTests: Stored<'pump-tests'>[];
  nozzles: Stored<'nozzles'>[];
  appliances: Stored<'appliances'>[];
  /** Lengths of it: a rig carries no more of a size than is in service. */
  hose: Stored<'hose'>[];
  /** What of it documents leave aside. */
  notices?: readonly PlanningNotice[];
  department: DepartmentValues;
}

export async function readDepartment(reader: RecordReader): Promise<DepartmentRecords> {
  const [rigs, pumpTests, nozzles, hoseTests, settings, appliances, hose] = await Promise.all([
    everyOne(reader, 'rigs'),
    everyOne(reader, 'pump-tests'),
    everyOne(reader, 'nozzles'),
    everyOne(reader, 'hose-tests'),
    everyOne(reader, 'settings'),
    everyOne(reader, 'appliances'),
    everyOne(reader, 'hose'),
  ]);
  const coefficients = departmentCoefficients(hoseTests);
  const limits = departmentLimits(settings);
  return {
    rigs,
    pumpTests,
    nozzles,
    appliances,
    hose,
    notices: hoseTestsAhead(hoseTests),
    department: {
      ...(Object.keys(coefficients).length > 0 && { coefficients }),
      ...(Object.keys(limits).length > 0 && { limits }),
    },
  };
}

async function everyOne<K extends Kind>(reader: RecordReader, kind: K): Promise<Stored<K>[]> {
  const found: Stored<K>[] = [];
  for await (const record of reader.all(kind)) found.push(record);
  return found;
}

/** A rig with the pump tests, the lengths of hose and the assist valve that are its own. */
export function pickedRig(
  { pumpTests, appliances, hose }: DepartmentRecords,
  rig: Stored<'rigs'>,
): PickedRig {
  const valve = assistValveOf(rig, appliances);
  return {
    rig,
    pumpTests: pumpTests.filter(({ rigId }) => rigId === rig.id),
    lengths: hose.filter(({ rigId }) => rigId === rig.id),
    ...(valve && { valve }),
  };
}

/**
 * The rigs in service as they can lay: with no more hose of a size than is in service.
 * @param today ISO date
 */
export function layingRigs({ rigs, hose }: DepartmentRecords, today: string): Stored<'rigs'>[] {
  return rigs
    .filter(({ inService }) => inService)
    .map((rig) => withHoseInService(rig, hose, today, []));
}

/**
 * The engines that hydrant cards are made for: the one with the largest and longest supply hose
 * in service lays and attacks, and of the others one with an assist valve, else the largest pump, boosts.
 * Where the records have none, engines of the usual rating without hose of their own stand in.
 * @param today ISO date
 */
export function cardRigs(
  records: DepartmentRecords,
  today: string,
): { attack: PickedRig; booster: PickedRig } {
  const laying = new Map(layingRigs(records, today).map((rig) => [rig.id, rig]));
  const layRank = ({ id }: Stored<'rigs'>) => rankOf(laying.get(id));
  const engines = records.rigs
    .filter(({ kind, inService }) => inService && (kind === 'engine' || kind === 'aerial'))
    .sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
  const attack = [...engines].sort((a, b) => layRank(b) - layRank(a))[0];
  const others = engines.filter((rig) => rig !== attack);
  const booster = others.sort(
    (a, b) =>
      Number(b.assistValve) - Number(a.assistValve) || (b.ratedGpm ?? 0) - (a.ratedGpm ?? 0),
  )[0];
  return {
    attack: attack ? pickedRig(records, attack) : standIn('Attack engine'),
    booster: booster ? pickedRig(records, booster) : standIn('an engine'),
  };
}

/** Diameter counts before length. */
function rankOf(rig: Stored<'rigs'> | undefined): number {
  const [largest] = rig ? supplySizes(rig) : [];
  return largest ? hoseCatalogue[largest.hose].diameterIn * 1e6 + largest.lengthFt : 0;
}

const standIn = (name: string): PickedRig => ({ rig: recordSchemas.rigs.parse({ name }) });
