import { type FlowTestEntry, flowTestResult, readPlan } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { kinds, recordSchemas } from '../model/index.ts';
import { openStore } from '../store/index.ts';
import { references } from '../store/references.ts';
import { crowFt, feetPerDegree, type LonLat } from '../streets/ellipsoid.ts';
import { buildStreetNetwork, usableHydrants } from '../streets/index.ts';
import { demoDistrict } from './demo-district.ts';
import { fillDemo } from './fill-demo.ts';
import { demoElevationFt, districtCentre } from './ground.ts';
import { crosses, holds } from './test-outlines.ts';

const { rows, name } = demoDistrict(1);
const network = buildStreetNetwork(rows.streets);
const resultOf = (test: (typeof rows)['flow-tests'][number]) =>
  flowTestResult(test as FlowTestEntry);

describe('the invented district', () => {
  it('has a few hundred hydrants, 1,500 buildings, five rigs at two stations, three years of tests', () => {
    expect(rows.hydrants.length).toBeGreaterThan(280);
    expect(rows.hydrants.length).toBeLessThan(360);
    expect(rows.buildings).toHaveLength(1500);
    expect(rows.rigs).toHaveLength(5);
    expect(new Set(rows.rigs.map(({ stationId }) => stationId)).size).toBe(2);
    expect(rows['flow-tests']).toHaveLength(3 * rows.hydrants.length);
    for (const kind of kinds) expect(rows[kind].length, kind).toBeGreaterThan(0);
  });

  it('is the same for the same seed and another for another', () => {
    expect(demoDistrict(1).rows).toEqual(rows);
    const other = demoDistrict(2).rows;
    expect(other.buildings).toHaveLength(1500);
    expect(other.buildings).not.toEqual(rows.buildings);
    expect(other['flow-tests']).not.toEqual(rows['flow-tests']);
  });

  it('says that it is invented, in its setting, on every row and in every plan', () => {
    expect(rows.settings).toMatchObject([{ name: 'district', value: { name, invented: true } }]);
    for (const kind of kinds) {
      for (const row of rows[kind]) expect(row.externalSource).toContain('Invented');
    }
    for (const { text } of rows.plans) {
      const read = readPlan(text);
      expect(read.ok && read.plan.invented).toBe(true);
    }
  });

  it('lies in the open ocean, within a few miles', () => {
    // "Point Nemo", Wikipedia: 48°52.6′ S 123°23.6′ W, about 2,688 km from the nearest land.
    const nemo: LonLat = [-(123 + 23.6 / 60), -(48 + 52.6 / 60)];
    for (const { longitude, latitude } of [...rows.hydrants, ...rows.buildings]) {
      expect(crowFt(nemo, [longitude, latitude])).toBeLessThan(5 * 5280);
    }
  });

  it.each(kinds)('every row of %s is valid, and its key comes once', (kind) => {
    const anyId = '01HV0000000000000000000000';
    for (const row of rows[kind]) {
      const given: Record<string, unknown> = { ...row };
      for (const { field, list } of references.filter(({ from }) => from === kind)) {
        if (given[field] !== undefined) given[field] = list ? [anyId] : anyId;
      }
      expect(recordSchemas[kind].safeParse(given).error).toBeUndefined();
    }
    const keys = rows[kind].map(({ externalId }) => externalId);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('every field that refers to a record names one', () => {
    for (const { from, field, to, list } of references) {
      const keys = new Set((rows[to] as { externalId?: string }[]).map((row) => row.externalId));
      for (const row of rows[from] as Record<string, unknown>[]) {
        const given = row[field];
        if (given === undefined) continue;
        for (const key of list ? (given as string[]) : [given as string]) {
          expect(keys.has(key), `${from} ${field} ${key}`).toBe(true);
        }
      }
    }
  });
});

describe('water in the invented district', () => {
  it('stands at 35 to 110 psi, within what towns are built for', () => {
    const statics = rows['flow-tests'].map(({ staticPsi }) => staticPsi);
    expect(Math.min(...statics)).toBeGreaterThanOrEqual(33);
    expect(Math.max(...statics)).toBeLessThanOrEqual(110);
  });

  it('every test gives a supply curve, and the classes of NFPA 291 are all there', () => {
    const classes = new Map<string, number>();
    for (const test of rows['flow-tests']) {
      const { class: found, notices } = resultOf(test);
      expect(notices.filter(({ level }) => level === 'error')).toEqual([]);
      classes.set(found!.name, (classes.get(found!.name) ?? 0) + 1);
    }
    const total = rows['flow-tests'].length;
    for (const one of ['AA', 'A', 'B', 'C']) {
      expect((classes.get(one) ?? 0) / total, one).toBeGreaterThan(0.03);
      expect((classes.get(one) ?? 0) / total, one).toBeLessThan(0.65);
    }
  });

  it('is weak on the hill and strong by the works', () => {
    const scale = feetPerDegree(districtCentre.latitude);
    const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1]!;
    const q20 = (test: (north: number, east: number) => boolean) =>
      median(
        rows.hydrants
          .filter(({ longitude, latitude }) =>
            test(
              (latitude - districtCentre.latitude) * scale.latitude,
              (longitude - districtCentre.longitude) * scale.longitude,
            ),
          )
          .map(
            ({ name: wanted }) =>
              resultOf(rows['flow-tests'].find(({ hydrantId }) => hydrantId === wanted)!).q20Gpm!,
          ),
      );
    expect(q20((north) => north > 2600)).toBeLessThan(1000);
    expect(q20((north, east) => east > 2600 && Math.abs(north) < 1500)).toBeGreaterThan(1500);
  });

  it('was less in the year that a main was left shut, for some by a third', () => {
    const fell = rows.hydrants.filter(({ name: wanted }) => {
      const of = rows['flow-tests'].filter(({ hydrantId }) => hydrantId === wanted).map(resultOf);
      return of[2]!.q20Gpm! < 0.67 * of[0]!.q20Gpm!;
    });
    expect(fell.length).toBeGreaterThan(3);
    expect(fell.length).toBeLessThan(rows.hydrants.length / 4);
  });

  it('readings are whole pounds, as gauges are read', () => {
    for (const { staticPsi, residualPsi, flowing = [] } of rows['flow-tests']) {
      for (const psi of [staticPsi, residualPsi, ...flowing.map(({ pitotPsi }) => pitotPsi!)]) {
        expect(Number.isInteger(psi)).toBe(true);
      }
    }
  });
});

describe('the invented town', () => {
  it('is one network of streets, without gaps', () => {
    expect(network.componentSizes).toHaveLength(1);
    expect(network.gapsClosed).toBe(0);
  });

  it('every hydrant and every building can be reached by street', () => {
    const routes = usableHydrants(network, rows.hydrants, rows.stations[0]!);
    expect(routes).toHaveLength(rows.hydrants.length);
    expect(routes.every(({ alongStreets }) => alongStreets)).toBe(true);
    for (const { longitude, latitude } of rows.buildings) {
      expect(network.nearestPoint(longitude, latitude)!.offFt).toBeLessThan(400);
    }
  });

  it('has hydrants at the kerb, at the height of the ground', () => {
    for (const { longitude, latitude, elevationFt } of rows.hydrants) {
      expect(network.nearestPoint(longitude, latitude)!.offFt).toBeLessThan(20);
      const ground = demoElevationFt(longitude, latitude)!;
      expect(Math.abs(elevationFt! - ground)).toBeLessThan(3);
    }
  });

  it('the ground is known across it and not across the ocean', () => {
    expect(demoElevationFt(districtCentre.longitude, districtCentre.latitude)).toBeGreaterThan(30);
    expect(demoElevationFt(districtCentre.longitude + 1, districtCentre.latitude)).toBeUndefined();
  });

  const outlines = rows.buildings.map(({ footprint }) => footprint![0]!);
  const near = (a: LonLat, b: LonLat) => crowFt(a, b) < 600;

  it('no building stands on another', () => {
    outlines.forEach((outline, i) => {
      for (const other of outlines.slice(i + 1)) {
        if (!near(outline[0]!, other[0]!)) continue;
        expect(
          crosses(outline, other) || holds(outline, other[0]!) || holds(other, outline[0]!),
        ).toBe(false);
      }
    });
  });

  it('no building stands on a street', () => {
    const pieces = rows.streets.flatMap(({ path }) =>
      path.slice(1).map((end, i): [LonLat, LonLat] => [path[i]!, end]),
    );
    for (const outline of outlines) {
      for (const piece of pieces) {
        if (near(outline[0]!, piece[0])) {
          expect(crosses(outline, piece) || holds(outline, piece[0])).toBe(false);
        }
      }
    }
  });

  it("every building's point is inside its outline", () => {
    rows.buildings.forEach(({ longitude, latitude }, i) => {
      expect(holds(outlines[i]!, [longitude, latitude])).toBe(true);
    });
  });
});

describe('filling a store with it', () => {
  it('writes every row with its references, once', async () => {
    const store = await openStore({ memory: true });
    try {
      await fillDemo(store);
      await fillDemo(store);
      for (const kind of kinds) expect(await store.count(kind), kind).toBe(rows[kind].length);
      const [plan] = (await store.list('plans')).records;
      const hydrant = await store.get('hydrants', plan!.hydrantIds[0]!);
      expect(plan!.name).toContain(hydrant!.name);
      const building = await store.get('buildings', plan!.buildingId!);
      expect(plan!.name).toContain(building!.name);
      const tests = await store.list('flow-tests', { where: { hydrantId: hydrant!.id } });
      expect(tests.total).toBe(3);
    } finally {
      await store.close();
    }
  });
});
