import { type Plan, piecesOf, splitPortRef } from '@plugside/fireground';
import { type PlayedRole, type Posts, playedRoles, relayRoles } from './role.ts';

/** Pieces joined to an engine by hose no longer than this are at hand there too [ft]; ours. */
const atHandFt = 50;

const ownerOf = (port: string) => splitPortRef(port).pieceId;

/** The pieces that a role stands at; none where the scene has no such role. */
export function postOf(scene: { posts: Posts }, role: PlayedRole): readonly string[] {
  return scene.posts[role] ?? [];
}

/** The roles that stand at something in a scene, from the water to the fire. */
export function rolesIn(scene: { posts: Posts }): PlayedRole[] {
  return playedRoles.filter((role) => postOf(scene, role).length > 0);
}

/**
 * Who stands where: the attack operator at the engine at the scene and what is joined to it by a short
 * hose, the nozzle crew at all that it feeds, a relay operator at each engine on the way there that no
 * short hose joins to a source, the hydrant operator at everything else.
 */
export function postsOf(plan: Plan): Posts {
  const fed = fedBy(plan, plan.scene);
  const near = new Set(
    plan.lines
      .filter((line) => ownerOf(line.to) === plan.scene && line.lengthFt <= atHandFt)
      .map((line) => ownerOf(line.from)),
  );
  const relayed = relayEnginesOf(plan).filter((id) => !fed.has(id) && !near.has(id));
  const ids = piecesOf(plan).map((piece) => piece.id);
  const posts: Posts = {
    'hydrant operator': ids.filter(
      (id) => id !== plan.scene && !fed.has(id) && !relayed.includes(id),
    ),
    'attack operator': ids.filter((id) => id === plan.scene || near.has(id)),
    'nozzle crew': ids.filter((id) => fed.has(id)),
  };
  relayRoles.forEach((role, at) => {
    const last = at === relayRoles.length - 1;
    const here = relayed.slice(at, last ? undefined : at + 1);
    if (here.length > 0) posts[role] = here;
  });
  return posts;
}

/** Everything that a piece feeds, by hose or because it sits there. */
function fedBy(plan: Plan, from: string): ReadonlySet<string> {
  const fed = new Set<string>();
  const open = [from];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const next = [
      ...plan.lines.filter((line) => ownerOf(line.from) === id).map((line) => ownerOf(line.to)),
      ...plan.nozzles
        .filter((nozzle) => nozzle.on !== undefined && ownerOf(nozzle.on) === id)
        .map((nozzle) => nozzle.id),
    ];
    for (const piece of next) {
      if (fed.has(piece) || piece === from) continue;
      fed.add(piece);
      open.push(piece);
    }
  }
  return fed;
}

/**
 * Engines that feed the scene and stand at no source, the one nearest to a source first: by how many
 * hoses lie between.
 */
function relayEnginesOf(plan: Plan): string[] {
  const sources = [...plan.hydrants, ...plan.drafts].map(({ id }) => id);
  for (const one of plan.appliances)
    if (one.kind === 'assist-valve' && sources.includes(ownerOf(one.on))) sources.push(one.id);
  const engines = new Set(plan.rigs.map(({ id }) => id));
  const hoses = new Map(sources.map((id) => [id, 0]));
  const atSource = new Set(sources);
  // A map is walked in the order in which it grows: all that is one hose away, then two, and so on.
  for (const [id, count] of hoses) {
    for (const line of plan.lines) {
      if (ownerOf(line.from) !== id) continue;
      const to = ownerOf(line.to);
      if (atSource.has(id) && !engines.has(id) && line.lengthFt <= atHandFt) atSource.add(to);
      if (!hoses.has(to)) hoses.set(to, count + 1);
    }
  }
  return plan.rigs
    .filter(({ id }) => id !== plan.scene && hoses.has(id) && !atSource.has(id))
    .filter(({ id }) => fedBy(plan, id).has(plan.scene))
    .map(({ id }) => id)
    .sort((a, b) => hoses.get(a)! - hoses.get(b)!);
}
