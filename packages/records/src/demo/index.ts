export { type DemoDistrict, type DemoRows, demoDistrict } from './demo-district.ts';
export { demoTerrain } from './demo-terrain.ts';
export { fillDemo } from './fill-demo.ts';
export { demoElevationFt } from './ground.ts';
