/** Links as cases write them: one trade word may have several spellings. */
import type { LinkSpec } from '@plugside/hydraulics';

/** A link as a case writes it. */
export interface WrittenLink {
  id: string;
  kind: string;
  from: string;
  to?: string;
  [field: string]: unknown;
}

const PSI_PER_FT = 0.434;

/**
 * @param heights elevation of each node [ft]; a pump's pressure is read at its own elevation
 * @throws Error when a kind is not known or a field is missing
 */
export function readCaseLink(link: WrittenLink, heights: ReadonlyMap<string, number>): LinkSpec {
  const field = fields(link);
  const shut = field.flag('shut', 'closed') || link.open === false;
  const base = { id: link.id, from: link.from, shut };
  const ended = () => {
    if (typeof link.to !== 'string') throw new Error(`Link ${link.id} (${link.kind}) has no "to".`);
    return { ...base, to: link.to, check: field.flag('check', 'checkValve', 'oneWay') };
  };
  const opening = { ...base, elevationFt: field.maybe('elevationFt') };
  switch (link.kind) {
    case 'hydrant':
    case 'main':
    case 'supplyCurve':
      return {
        ...ended(),
        kind: 'supplyCurve',
        staticPsi: field.number('staticPsi'),
        residualPsi: field.number('residualPsi'),
        testGpm: field.number('testGpm', 'flowGpm'),
      };
    case 'hose':
      return {
        ...ended(),
        kind: 'hose',
        coefficient: field.number('C', 'c', 'coefficient'),
        lengthFt: field.number('lengthFt'),
        lines: field.maybe('lines'),
      };
    case 'k':
    case 'loss':
    case 'valve':
    case 'appliance':
      return {
        ...ended(),
        kind: 'loss',
        lossPsi: field.number('lossPsi'),
        atGpm: field.number('atGpm'),
      };
    case 'check':
    case 'clapper':
      return {
        ...ended(),
        check: true,
        kind: 'loss',
        lossPsi: field.maybe('lossPsi') ?? 0,
        atGpm: field.maybe('atGpm') ?? 1000,
      };
    case 'pump':
      return readPump(link, heights);
    case 'nozzle':
      if (field.maybe('ratedPsi') === undefined) {
        return { ...opening, kind: 'nozzle', k: field.number('K', 'k') };
      }
      return readAutomatic(link);
    case 'automatic':
    case 'automaticNozzle':
    case 'autoNozzle':
      return readAutomatic(link);
    case 'relief':
    case 'reliefValve':
      return readRelief(link);
    default:
      throw new Error(`Link ${link.id} is of the kind "${link.kind}", which no case has had yet.`);
  }
}

function readPump(link: WrittenLink, heights: ReadonlyMap<string, number>): LinkSpec {
  const field = fields(link);
  const loss = link.passLoss as { lossPsi: number; atGpm: number } | undefined;
  const passLossPsi = field.maybe('passLossPsi');
  const setPsi = field.maybe('pdpPsi', 'setPsi', 'dischargePsi');
  const speed = field.maybe('speedFraction', 'speed');
  // A governor reads the pressure at the pump, which may stand above or below its outlet's node.
  const risePsi =
    PSI_PER_FT * ((field.maybe('elevationFt') ?? heights.get(link.to!)!) - heights.get(link.to!)!);
  return {
    id: link.id,
    kind: 'pump',
    from: link.from,
    to: link.to!,
    shut: field.flag('shut', 'closed'),
    capability: (link.capability ?? link.points ?? link.curve) as [number, number][],
    pdpPsi: setPsi === undefined ? undefined : setPsi + risePsi,
    speedFraction: speed,
    idle: field.flag('idle', 'notPumping', 'off') || link.pumping === false || link.on === false,
    protectIntakePsi: field.maybe('protectIntakePsi', 'floorPsi', 'intakeFloorPsi', 'minIntakePsi'),
    passLoss:
      loss ??
      (passLossPsi === undefined
        ? undefined
        : { lossPsi: passLossPsi, atGpm: field.maybe('passAtGpm', 'atGpm') ?? 1000 }),
  };
}

function readAutomatic(link: WrittenLink): LinkSpec {
  const field = fields(link);
  return {
    id: link.id,
    kind: 'automaticNozzle',
    from: link.from,
    shut: field.flag('shut', 'closed'),
    elevationFt: field.maybe('elevationFt'),
    ratedPsi: field.number('ratedPsi', 'rated'),
    leastGpm: field.number('leastGpm', 'minGpm'),
    greatestGpm: field.number('greatestGpm', 'maxGpm'),
  };
}

function readRelief(link: WrittenLink): LinkSpec {
  const field = fields(link);
  const k = field.maybe('K', 'k');
  return {
    id: link.id,
    kind: 'relief',
    from: link.from,
    shut: field.flag('shut', 'closed'),
    elevationFt: field.maybe('elevationFt'),
    settingPsi: field.number('settingPsi', 'setPsi', 'openPsi'),
    // As a nozzle, `Q = K·√(P − setting)` rises one psi at K gpm.
    risePsi: k === undefined ? field.number('risePsi', 'lossPsi') : 1,
    atGpm: k ?? field.number('atGpm'),
  };
}

function fields(link: WrittenLink) {
  const maybe = (...names: string[]): number | undefined => {
    const name = names.find((one) => typeof link[one] === 'number');
    return name === undefined ? undefined : (link[name] as number);
  };
  return {
    maybe,
    number(...names: string[]): number {
      const value = maybe(...names);
      if (value === undefined) {
        throw new Error(`Link ${link.id} (${link.kind}) lacks ${names.join(' or ')}.`);
      }
      return value;
    },
    flag: (...names: string[]): boolean => names.some((name) => link[name] === true),
  };
}
