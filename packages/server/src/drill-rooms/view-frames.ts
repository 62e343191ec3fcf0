import {
  type DrillScene,
  type DrillState,
  type DrillView,
  type Role,
  type RoomSettingsNow,
  viewFor,
} from '@plugside/drill';

/** Counts that are in every frame. */
const always: readonly (keyof DrillView)[] = ['tick', 'timeS'];

/** What of a drill is shown beside what the role sees. */
export type ViewOptions = Pick<RoomSettingsNow, 'guided' | 'faultsShown'>;

export interface Frame {
  n: number;
  /** For a device that has frame n − 1. */
  delta: string;
  /** For any other. */
  whole(): string;
}

/** A role's views, one after another, each made once for all who watch the role. */
export class ViewFrames {
  readonly #role: Role;
  #n = 0;
  #parts = new Map<string, string>();

  constructor(role: Role) {
    this.#role = role;
  }

  /** The next frame: parts of the view that are as they were are left out of its delta. */
  next(scene: DrillScene, state: DrillState, shown: ViewOptions): Frame {
    const view = viewFor(this.#role, scene, state, shown);
    const parts = new Map<string, string>();
    const changed: string[] = [];
    for (const [key, value] of Object.entries(view)) {
      if (value === undefined) continue;
      const part = `${JSON.stringify(key)}:${JSON.stringify(value)}`;
      parts.set(key, part);
      if (part !== this.#parts.get(key) || always.includes(key as keyof DrillView)) {
        changed.push(part);
      }
    }
    for (const key of this.#parts.keys())
      if (!parts.has(key)) changed.push(`${JSON.stringify(key)}:null`);
    this.#parts = parts;
    this.#n += 1;
    const n = this.#n;
    let whole: string | undefined;
    return {
      n,
      delta: `{"type":"view","n":${n},"view":{${changed.join()}}}`,
      whole: () => {
        whole ??= `{"type":"view","n":${n},"whole":true,"view":{${[...parts.values()].join()}}}`;
        return whole;
      },
    };
  }
}
