import { type DrillRun, ProblemError, removeDrillRun } from '../../api/index.ts';
import { RemoveDialog } from '../../editing/RemoveDialog.tsx';

interface RemoveDrillProps {
  run: DrillRun;
  endedAt: string;
  /** It is gone. */
  onRemoved(): void;
}

/** Asks before a past drill goes out of the records. */
export function RemoveDrill({ run, endedAt, onRemoved }: RemoveDrillProps) {
  const { roomId, title, crew, startedAt } = run;
  const day = new Date(startedAt).toLocaleString();
  const remove = async () => {
    try {
      await removeDrillRun(roomId, endedAt);
    } catch (error) {
      // Somebody else has removed it: that is what was asked for.
      if (!(error instanceof ProblemError && error.status === 404)) throw error;
    }
    onRemoved();
  };
  return (
    <RemoveDialog
      title={`Remove ${title}?`}
      spoken={`Remove ${title}, ${day}`}
      keep="Keep it"
      onRemove={remove}
    >
      The drill of {day}
      {crew !== undefined && `, ${crew},`} goes out of the records for good, with its log, its
      replay and its score. A backup that was taken before still has it.
    </RemoveDialog>
  );
}
