/** A source outside the project. */
export interface Source {
  /** As it calls itself. */
  title: string;
  /** Left out where there is none, or where the address carries a maker's name. */
  url?: string;
}

/** Sources of the worked values, by a short name of our own. */
export const SOURCES = {
  hoseLays: {
    title: 'Calculating Friction Loss in Hose Lays (training slides), City of Rohnert Park records',
    url: 'https://records.rpcity.org/WebLink/DocView.aspx?dbid=0&id=366543&repo=CityOfRohnertPark',
  },
  stateExam: {
    title: 'Florida pump-operations exam answers',
    url: 'http://grafana.stuvia.com/doc/11036619/florida-pump-ops-test-practiceexamination-2026-questions-withanswers-graded-a',
  },
  whichSupplyLine: {
    title: 'Which Supply Line?, FireRescue1',
    url: 'https://www.firerescue1.com/archive/articles/which-supply-line-hxdWZBLi43q0nVp3',
  },
  largeDiameterHose: {
    title: 'Working With Large-Diameter Hose Part 1, Fire Engineering',
    url: 'https://emberly.fireengineering.com/firefighting-equipment/working-with-large-diameter-hose-part-1',
  },
  ifstaTables: { title: 'IFSTA driver/operator relay and coefficient tables (from memory)' },
  tipFlowTable: { title: 'Nozzle maker instruction manual LIN-050, tip flow table' },
  nozzleCards: {
    title: 'Ch 6 Hose, Nozzles and Flow Rates study cards',
    url: 'https://brainscape.com/flashcards/ch-6-hose-nozzles-and-flow-rates-15896064/packs/22060950',
  },
  masterStreamManual: { title: 'Nozzle maker master-stream manual, smooth-bore constants' },
  reactionInYourHead: {
    title: 'Fireground Hydraulics in Your Head: Nozzle Reaction, Fire Engineering',
    url: 'https://emberly.fireengineering.com/?p=206906',
  },
  formulaCards: {
    title: 'Formulas study cards',
    url: 'https://www.freezingblue.com/flashcards/print_preview.cgi?cardsetID=26489',
  },
  nwcgPumpPressures: {
    title: 'NWCG 3.4 Calculating Engine Pump Pressures',
    url: 'https://www.nwcg.gov/course/ffm/squirt-water/34-calculating-engine-pump-pressures',
  },
  mathCards: {
    title: 'Math Formulas driver/operator study cards',
    url: 'https://brainscape.com/flashcards/math-formulas-13880100/packs/21531390',
  },
  connectionPressures: {
    title: 'Sprinkler/standpipe connection pressures',
    url: 'https://askvity.info/fire-protection-systems/what-do-you-pump-a-sprinkler-system-at',
  },
  supplyAnalysis15: {
    title: 'Water-supply analysis, slide 15',
    url: 'http://tkolb.net/WatSup/sld015.htm',
  },
  supplyAnalysis16: {
    title: 'Water-supply analysis, slide 16',
    url: 'http://tkolb.net/WatSup/sld016.htm',
  },
  supplyAnalysis1: {
    title: 'Water-supply analysis, slide 1 (formula)',
    url: 'http://tkolb.net/WatSup/sld001.htm',
  },
  flowTestForum: {
    title: "Fire hydrant flow test and modifiers, engineers' forum quoting NFPA 291",
    url: 'http://www.eng-tips.com/viewthread.cfm?qid=333286',
  },
  flowTestProcedure: {
    title: 'Hydrant flow test procedure article',
    url: 'https://selvi.org/en/blog/nfpa/hydrant-flow-test-procedure',
  },
  waterlineAnalysis: {
    title: 'Waterline fire flow analysis 2004, City of College Station',
    url: 'https://opendoc.cstx.gov/CRWDocArc/DocView.aspx?dbid=0&id=614444&repo=DOCUMENT-SERVER',
  },
  ruralHydrant: {
    title: 'Rural pressurized fire hydrant part 2, Firehouse',
    url: 'http://www.firehouse.com/article/11301992/rural-firefighting-academy?page=2',
  },
  trackingSupply: {
    title: 'Tracking/estimating water supply on the fire ground',
    url: 'http://www.therollsteady.com/training/hashingyourintake',
  },
  engineersTest: {
    title: "Engineer's Test 2014 study cards",
    url: 'https://www.freezingblue.com/flashcards/print_preview.cgi?cardsetID=283176',
  },
  flowTestSelection: {
    title: 'NFPA 291 flow-test selection article, three-point test',
    url: 'https://industrialmonitordirect.com/blogs/knowledgebase/nfpa-291-flow-test-selection-for-fire-sprinkler-hydraulic-design',
  },
  syntheticHose: {
    title: 'Firehouse Forums thread on synthetic-hose coefficients',
    url: 'http://www.firehouse.com/forums/t52848/',
  },
  pumpTestTable: { title: 'Pump maker manual, performance test table' },
  pumpCards: {
    title: 'Pump Ops ch 7 study cards',
    url: 'https://www.brainscape.com/flashcards/pump-ops-chpt-7-5476749/packs/7750951',
  },
  staticCards: {
    title: 'Chapter 11 Static Water Supply Sources study cards',
    url: 'https://www.brainscape.com/flashcards/chapter-11-static-water-supply-sources-5766737/packs/8776920',
  },
  staticCards2: {
    title: 'Ch 11 Static Water Supply Sources study cards, second set',
    url: 'https://brainscape.com/flashcards/ch-11-static-water-supply-sources-11800169/packs/20763344',
  },
  dryHydrants: {
    title: 'Dry Hydrants and Static Water Supplies, Fire Engineering 2000',
    url: 'https://www.fireengineering.com/2000/02/01/248320/dry-hydrants-and-static-water-supplies/',
  },
  relayLesson3: {
    title: 'Relay Pumping Operations lesson p3, Firehouse',
    url: 'http://www.firehouse.com/article/10466972/relay-pumping-operations?page=3',
  },
  relayDrill: {
    title: '3,550 ft relay pumping drill 2015',
    url: 'https://www.gotbigwater.com/apps/public/news/newsView.cfm?News_ID=188&Print=1',
  },
  valveFlowTest: { title: "A four-way hydrant valve maker's published flow test" },
  relayField4: {
    title: 'Relay pump operations field tests p4, Firelink',
    url: 'http://firelink.monster.com/training/articles/9265-relay-pump-operations-who-says-its-just-for-the-long-lay?page=4',
  },
  relayField5: {
    title: 'Relay pump operations field tests p5, Firelink',
    url: 'http://firelink.monster.com/training/articles/9265-relay-pump-operations-who-says-its-just-for-the-long-lay?page=5',
  },
  relayField9: {
    title: 'Relay pump operations field tests p9, Firelink',
    url: 'http://firelink.monster.com/training/articles/9265-relay-pump-operations-who-says-its-just-for-the-long-lay?page=9',
  },
  relayField11: {
    title: 'Relay pump operations field tests p11, Firelink',
    url: 'http://firelink.monster.com/training/articles/9265-relay-pump-operations-who-says-its-just-for-the-long-lay?page=11',
  },
  flowPriorities: {
    title: 'Water Supply Flow Priorities, Fire Apparatus',
    url: 'https://www.fireapparatusmagazine.com/fire-apparatus/water-supply-flow-priorities/',
  },
  nwcgVolume: {
    title: 'NWCG 3.2 Volume of Water in Hose',
    url: 'https://www.nwcg.gov/course/ffm/squirt-water/32-volume-of-water-in-hose',
  },
  ldhBasics: {
    title: 'Know the basics when using LDH',
    url: 'http://exclusive.multibriefs.com/content/know-the-basics-when-using-a-large-diameter-hose/law-enforcement-defense-security',
  },
  nfpa1962: {
    title: 'NFPA 1962-2018 excerpts',
    url: 'https://www.spaspecialcommitteesibu.com/nfpa-1962-2018-standard-for-the-care-use-inspection-service-testing-and-replacement-of-fire-hose-couplings-nozzles-and-fire-hose-appliances.html',
  },
  supplyBasics: {
    title: 'Water supply basics: hydraulics for pump operators, FireRescue1',
    url: 'https://www.firerescue1.com/fire-products/water-supply/articles/water-supply-basics-hydraulics-for-pump-operators-MEXfQw4e4aH1rJkn/',
  },
  waterHammer: {
    title: 'Water-hammer equations',
    url: 'https://kidadvocacy.com/dmseu/water-hammer-equation.html',
  },
  handMethodCards: {
    title: 'Hydraulics study cards (hand method)',
    url: 'https://www.freezingblue.com/flashcards/print_preview.cgi?cardsetID=295947',
  },
  standardAtmosphere: {
    title: 'Standard Atmospheric Data for Altitude and Temperature, table 1',
    url: 'https://engineersedge.com/calculators/standard_atmospheric_data_15729.htm',
  },
  vapourHandbook: {
    title: 'Vapor Pressure of Water, Handbook of Chemistry and Physics (1992-93)',
    url: 'https://lcm91.tripod.com/documents/vp_H2O.htm',
  },
  coloradoTests: {
    title:
      'Flow tests of 1975 at a Colorado town, Colorado Water Conservation Board document 69668',
    url: 'https://dnrweblink.state.co.us/CWCB/0/doc/69668/Page30.aspx',
  },
} as const satisfies Record<string, Source>;
