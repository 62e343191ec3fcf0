import type { PublishedRow } from '@plugside/hydraulics';

// Ponds and streams. Values from outside the project, each with its source, basis and tolerance.

const routing = {
  title: 'Highway Hydraulics part 3, Fire Apparatus',
  url: 'https://www.fireapparatusmagazine.com/equipment/highway-hydraulics-main-street-to-country-roads-part-3-routing-and-fill-sites/',
};

export const staticSourceRows = [
  {
    given: { flowGpm: 250, hours: 2 },
    expected: { gal: 30_000 },
    within: { gal: 1 },
    source: routing,
    basis: 'published',
  },
  {
    given: { flowGpm: 400, hours: 2 },
    expected: { gal: 48_000 },
    within: { gal: 1 },
    source: routing,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

export const pondRows = [
  {
    given: { acres: 1, depthFt: 1 },
    expected: { gal: 325_851 },
    within: { gal: 0.5 },
    source: {
      title: 'Acre Feet, Mace Water and Land',
      url: 'https://www.macewaterandland.com/blog/blog-post-title-two-jde3g',
    },
    basis: 'published',
  },
  {
    given: { acres: 1.25, depthFt: 6 },
    expected: { gal: 2_443_717 },
    within: { gal: 250 },
    source: {
      title: 'Pond and lake calculations, Lakeland Biologist',
      url: 'https://www.lakelandbiologist.com/calculator',
    },
    basis: 'published',
    note: 'Worked there with 325,829 gal to the acre-foot.',
  },
] satisfies PublishedRow<object, object>[];

export const streamRows = [
  {
    given: { widthFt: 1, depthFt: 1, floatFt: 1, floatS: 1, factor: 1 },
    expected: { flowGpm: 448.8 },
    within: { flowGpm: 0.1 },
    source: {
      title: 'Conversions and Water Measurements, Colorado Water Conservation Board document 26343',
      url: 'https://dnrweblink.state.co.us/CWCB/0/doc/26343/Page19.aspx',
    },
    basis: 'published',
  },
  {
    given: { widthFt: 4, depthFt: 0.5, floatFt: 100, floatS: 126 },
    expected: { flowGpm: 569.9 },
    within: { flowGpm: 0.2 },
    source: {
      title: 'Calculating a Flow Rate, Irrigation Supply Parts',
      url: 'https://www.irrigationsupplyparts.com/calculating-a-flow-rate/',
    },
    basis: 'corrected',
    note: 'Printed as 562: it rounds on the way and takes 7.40 gal to the cubic foot for 7.48.',
  },
] satisfies PublishedRow<object, object>[];
