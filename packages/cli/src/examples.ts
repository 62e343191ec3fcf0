/** Worked examples under a command's help. Each runs as it stands from the checkout's folder. */
export function examples(...shown: readonly (readonly [command: string, what: string])[]): string {
  const lines = shown.map(([command, what]) => `  $ ${command}\n      ${what}`);
  return `\nExamples:\n${lines.join('\n')}`;
}
