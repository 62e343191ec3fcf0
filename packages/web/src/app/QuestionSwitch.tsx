import { Switcher } from '../editing/Switcher.tsx';
import { useView } from '../plan-store/view.ts';

/** The three questions of one plan. */
export function QuestionSwitch() {
  const question = useView((view) => view.question);
  const setQuestion = useView((view) => view.setQuestion);
  return (
    <Switcher
      className="questions"
      label="Question"
      value={question}
      options={[
        { value: 'most', text: 'What do I get?' },
        { value: 'set', text: 'How do I set it?' },
        { value: 'now', text: 'What happens now?' },
      ]}
      onChange={setQuestion}
    />
  );
}
