import { removeTerrain } from '../../api/elevation.ts';
import { RemoveDialog } from '../../editing/RemoveDialog.tsx';

/** Asks before the heights of the ground are taken out of the records. */
export function RemoveTerrain({ name, onRemoved }: { name: string; onRemoved(): void }) {
  return (
    <RemoveDialog
      title={`Remove the heights of ${name}?`}
      spoken={`Remove ${name}`}
      keep="Keep them"
      onRemove={async () => {
        await removeTerrain();
        onRemoved();
      }}
    >
      Lays then rise and fall by the heights in the records alone, else they are taken as level:
      pressures and flows of many plans change. To have the heights back, load the file again.
    </RemoveDialog>
  );
}
