import { describe, expect, test } from 'vitest';
import { ruledApplianceLossPsi } from './appliance-loss.ts';
import { elevationPsi, floorElevationPsi } from './elevation.ts';
import { hoseFrictionPsi, parallelCoefficient } from './hose-friction.ts';
import { smoothBoreFlowGpm } from './nozzles.ts';
import { pumpDischargePsi } from './pdp.ts';
import {
  pdpHandlineRows,
  pdpMasterStreamRows,
  pdpStandpipeRows,
  pdpWyeRows,
  pdpWyeRows2,
} from './published/discharge-pressure.ts';
import { misses, titled } from './published/published-row.ts';

describe('hand line', () => {
  test.each(titled(pdpHandlineRows))('%s', (_, row) => {
    const { c, flowGpm, lengthFt, nozzlePsi, riseFloors, psiPerFloor } = row.given;
    const flPsi = hoseFrictionPsi(c, flowGpm, lengthFt);
    const elevation = floorElevationPsi(riseFloors + 1, psiPerFloor);
    const pdpPsi = pumpDischargePsi({ nozzlePsi, frictionPsi: flPsi, elevationPsi: elevation });
    expect(misses(row, { flPsi, pdpPsi })).toEqual([]);
  });
});

describe('wye', () => {
  test.each(titled(pdpWyeRows))('%s', (_, row) => {
    const { supplyC, supplyFt, supplyGpm, attackC, attackFt, attackGpm } = row.given;
    const supplyFlPsi = hoseFrictionPsi(supplyC, supplyGpm, supplyFt);
    const attackFlPsi = hoseFrictionPsi(attackC, attackGpm, attackFt);
    const wye = ruledApplianceLossPsi('wye', supplyGpm);
    const got = { supplyFlPsi, attackFlPsi, totalLossPsi: supplyFlPsi + attackFlPsi + wye };
    expect(misses(row, got)).toEqual([]);
  });

  test.each(titled(pdpWyeRows2))('%s', (_, row) => {
    const { supplyC, supplyFt, supplyGpm, attackC, attackFt, attackGpm } = row.given;
    const { nozzlePsi, appliancePsi, riseFt } = row.given;
    const pdpPsi = pumpDischargePsi({
      nozzlePsi,
      frictionPsi:
        hoseFrictionPsi(supplyC, supplyGpm, supplyFt) +
        hoseFrictionPsi(attackC, attackGpm, attackFt),
      appliancePsi,
      elevationPsi: elevationPsi(riseFt),
    });
    expect(misses(row, { pdpPsi })).toEqual([]);
  });
});

describe('master stream', () => {
  test.each(titled(pdpMasterStreamRows))('%s', (_, row) => {
    const { tipIn, nozzlePsi, lines, c, lengthFt, appliancePsi, riseFt, psiPerFt } = row.given;
    const flowGpm = smoothBoreFlowGpm(tipIn, nozzlePsi);
    const flPsi = hoseFrictionPsi(parallelCoefficient(Array(lines).fill(c)), flowGpm, lengthFt);
    const pdpPsi = pumpDischargePsi({
      nozzlePsi,
      frictionPsi: flPsi,
      appliancePsi,
      elevationPsi: elevationPsi(riseFt, psiPerFt),
    });
    expect(misses(row, { flowGpm, flPsi, pdpPsi })).toEqual([]);
  });
});

describe('standpipe', () => {
  test.each(titled(pdpStandpipeRows))('%s', (_, row) => {
    const { supplyLines, supplyC, supplyFt, riserC, riserFt, attackC, attackFt } = row.given;
    const { attackGpm, nozzlePsi, standpipePsi, riseFt, psiPerFt } = row.given;
    const supply = parallelCoefficient(Array(supplyLines).fill(supplyC));
    const pdpPsi = pumpDischargePsi({
      nozzlePsi,
      frictionPsi:
        hoseFrictionPsi(supply, attackGpm, supplyFt) +
        hoseFrictionPsi(riserC, attackGpm, riserFt) +
        hoseFrictionPsi(attackC, attackGpm, attackFt),
      appliancePsi: standpipePsi,
      elevationPsi: elevationPsi(riseFt, psiPerFt),
    });
    expect(misses(row, { pdpPsi })).toEqual([]);
  });
});

test('bad input refuses', () => {
  expect(() => pumpDischargePsi({ nozzlePsi: 100, frictionPsi: -1 })).toThrow('frictionPsi is -1');
});
