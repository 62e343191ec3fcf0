import type { AssistValve } from '@plugside/fireground';
import type { Fields } from '../model/index.ts';

/** A department's own figures for the assist valve that a rig brings. */
export interface OwnValve {
  /** As on record: "Assist valve, Engine 1". */
  name: string;
  /** It names another rig, and is the only one that was measured. */
  standsIn?: true;
  /** Those of its paths that are on record. */
  losses: Partial<Pick<AssistValve, 'clapperLoss' | 'suctionLoss' | 'dischargeLoss'>>;
}

/**
 * The assist valve on record for a rig that carries one: the one whose name has the rig's in it, as
 * whole words; else the only one that the department has on record, nearer to its own than a default.
 * Undefined where there is none, or where it has no figures: the defaults count then.
 */
export function assistValveOf(
  rig: Pick<Fields<'rigs'>, 'name' | 'assistValve'>,
  appliances: readonly Fields<'appliances'>[],
): OwnValve | undefined {
  if (!rig.assistValve) return undefined;
  const valves = appliances.filter(({ kind }) => kind === 'assist-valve');
  const own = valves.find(({ name }) => names(name, rig.name));
  const found = own ?? (valves.length === 1 ? valves[0] : undefined);
  if (!found) return undefined;
  const { name, loss, suctionLoss, dischargeLoss } = found;
  const losses: OwnValve['losses'] = {
    ...(loss && { clapperLoss: loss }),
    ...(suctionLoss && { suctionLoss }),
    ...(dischargeLoss && { dischargeLoss }),
  };
  if (Object.keys(losses).length === 0) return undefined;
  return { name, ...(!own && { standsIn: true as const }), losses };
}

/** "Engine 1" is in "Assist valve, Engine 1", not in "Assist valve, Engine 12". */
function names(text: string, rigName: string): boolean {
  const words = (one: string) =>
    ` ${one
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, ' ')
      .trim()} `;
  return words(text).includes(words(rigName));
}
