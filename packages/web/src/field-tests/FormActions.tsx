import { useState } from 'react';
import { Button } from 'react-aria-components';

interface FormActionsProps {
  /** What is missing; null where it can be saved. */
  missing: string | null;
  onSave(): void | Promise<void>;
  onCancel?: () => void;
  saveText: string;
}

/** Save and cancel. Pressing save too early says what is missing instead of nothing. */
export function FormActions({ missing, onSave, onCancel, saveText }: FormActionsProps) {
  const [asked, setAsked] = useState(false);
  const [saving, setSaving] = useState(false);
  const [failed, setFailed] = useState<string | null>(null);
  const save = async () => {
    setAsked(true);
    if (missing !== null || saving) return;
    setSaving(true);
    setFailed(null);
    try {
      await onSave();
    } catch (error) {
      setFailed(error instanceof Error ? error.message : String(error));
    } finally {
      setSaving(false);
    }
  };
  return (
    <div className="form-actions">
      <Button className="save-button" isPending={saving} onPress={save}>
        {saving ? 'Saving' : saveText}
      </Button>
      {onCancel && (
        <Button className="quiet-button" onPress={onCancel}>
          Cancel
        </Button>
      )}
      <p role="alert" className="form-missing">
        {failed ? `Not saved. ${failed}` : asked && missing}
      </p>
    </div>
  );
}
