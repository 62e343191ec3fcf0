import { ProgressBar } from 'react-aria-components';

interface ProgressProps {
  label: string;
  done: number;
  total: number;
  /** How far, in words: "300 of 1,204 rows". */
  text: string;
}

/** How far something has come; while the total is not known, only that it goes on. */
export function Progress({ label, done, total, text }: ProgressProps) {
  const known = total > 0;
  return (
    <ProgressBar
      className="progress"
      aria-label={label}
      value={done}
      maxValue={known ? total : 1}
      isIndeterminate={!known}
      valueLabel={text}
    >
      {({ percentage }) => (
        <>
          <span className="progress-track">
            <span
              className={known ? 'progress-done' : 'progress-done progress-going'}
              style={known ? { width: `${percentage ?? 0}%` } : undefined}
            />
          </span>
          <span className="progress-text figures">{text}</span>
        </>
      )}
    </ProgressBar>
  );
}
