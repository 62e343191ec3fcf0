import {
  freePortsOf,
  nameOf,
  occupantsOf,
  type PortRef,
  piecesOf,
  portsOf,
} from '@plugside/fireground';
import { type PlayedRole, playedRoles, type Role } from './role.ts';
import type { DrillScene } from './scene.ts';
import { postOf } from './scene-posts.ts';

/** A port with what never changes of it in a drill. */
export interface ScenePort {
  port: PortRef;
  pieceId: string;
  label: string;
  /** What sits on it for good: a valve, a nozzle. */
  sits: string | null;
  /** A hose can be on it. */
  takesHose: boolean;
}

interface SceneFacts {
  ports: ScenePort[];
  reach: Record<Role, ReadonlySet<string>>;
}

/** Worked out once for a scene, which never changes: views are asked for many times a second. */
const known = new WeakMap<DrillScene, SceneFacts>();

function factsOf(scene: DrillScene): SceneFacts {
  const before = known.get(scene);
  if (before) return before;
  const bare = { ...scene.plan, lines: [] };
  const pieces = piecesOf(scene.plan);
  const ports = pieces.flatMap((piece) => {
    const free = new Set(freePortsOf(bare, piece).map(({ name }) => name));
    return portsOf(piece).map(({ name, label }): ScenePort => {
      const port = `${piece.id}.${name}`;
      return {
        port,
        pieceId: piece.id,
        label: `${nameOf(piece)}, ${label.toLowerCase()}`,
        sits: occupantsOf(bare, port)[0] ?? null,
        takesHose: free.has(name),
      };
    });
  });
  const all = new Set(pieces.map(({ id }) => id));
  const reach: SceneFacts['reach'] = {
    ...(Object.fromEntries(
      playedRoles.map((role) => [role, new Set(postOf(scene, role))]),
    ) as unknown as Record<PlayedRole, ReadonlySet<string>>),
    instructor: all,
    observer: all,
  };
  const facts = { ports, reach };
  known.set(scene, facts);
  return facts;
}

/** Every port of a scene. */
export function scenePorts(scene: DrillScene): readonly ScenePort[] {
  return factsOf(scene).ports;
}

/** The pieces that a role sees: its post, or all. */
export function reachOf(role: Role, scene: DrillScene): ReadonlySet<string> {
  return factsOf(scene).reach[role];
}
