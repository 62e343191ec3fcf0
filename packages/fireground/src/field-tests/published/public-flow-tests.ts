/**
 * Flow tests out of public agencies' reports, values as printed there. `statedQ20Gpm` is what the
 * report states at 20 psi.
 */
export interface PublicFlowTest {
  place: string;
  testedOn: string;
  staticPsi: number;
  residualPsi: number;
  pitotPsi?: number;
  flowGpm: number;
  statedQ20Gpm?: number;
  source: { title: string; url: string };
}

const colorado = {
  title: 'Flow tests of 1975 at a Colorado town, Colorado Water Conservation Board document 69668',
  url: 'https://dnrweblink.state.co.us/CWCB/0/doc/69668/Page30.aspx',
};

export const publicFlowTests: readonly PublicFlowTest[] = [
  {
    place: 'First and Grant',
    testedOn: '1975-09-30',
    staticPsi: 53,
    residualPsi: 5,
    pitotPsi: 4,
    flowGpm: 331,
    statedQ20Gpm: 270,
    source: colorado,
  },
  {
    place: 'Second and Lincoln',
    testedOn: '1975-09-30',
    staticPsi: 50,
    residualPsi: 12,
    pitotPsi: 7.5,
    flowGpm: 453,
    statedQ20Gpm: 399,
    source: colorado,
  },
  {
    place: 'Third and Grant',
    testedOn: '1975-09-30',
    staticPsi: 54,
    residualPsi: 12,
    pitotPsi: 6,
    flowGpm: 405,
    statedQ20Gpm: 361,
    source: colorado,
  },
  {
    place: 'Fourth and Lincoln',
    testedOn: '1975-09-30',
    staticPsi: 53,
    residualPsi: 35,
    pitotPsi: 17.5,
    flowGpm: 691,
    statedQ20Gpm: 959,
    source: colorado,
  },
  {
    place: 'Fifth and Lincoln',
    testedOn: '1975-09-30',
    staticPsi: 50,
    residualPsi: 46,
    pitotPsi: 3.5,
    flowGpm: 309,
    statedQ20Gpm: 917,
    source: colorado,
  },
  {
    place: 'Castlegate Drive',
    testedOn: '2004-03-01',
    staticPsi: 90,
    residualPsi: 85,
    flowGpm: 1140,
    source: {
      title: 'Waterline fire flow analysis (2004), City of College Station',
      url: 'https://opendoc.cstx.gov/CRWDocArc/DocView.aspx?dbid=0&id=614444&repo=DOCUMENT-SERVER',
    },
  },
  {
    place: 'Stetson Drive',
    testedOn: '2011-10-01',
    staticPsi: 86,
    residualPsi: 69,
    flowGpm: 1300,
    source: {
      title: 'Fire flow report, Saddle Creek Phase 9 (2011), Brazos County records',
      url: 'https://opendoc.cstx.gov/CRWDocArc/DocView.aspx?dbid=0&id=608761&repo=DOCUMENT-SERVER',
    },
  },
  {
    place: 'Deacon Drive',
    testedOn: '2014-10-01',
    staticPsi: 75,
    residualPsi: 65,
    flowGpm: 1300,
    source: {
      title: 'Fire flow report, Barracks II Phase 107 (2014), City of College Station',
      url: 'https://opendoc.cstx.gov/CRWDocArc/DocView.aspx?dbid=0&id=1232552&repo=DOCUMENT-SERVER',
    },
  },
];
