/** Colours of a drawing. Nothing is told by colour alone: dashes, widths and words say it too. */
export interface Tone {
  ink: string;
  quiet: string;
  grid: string;
  hookup: string;
  water: string;
  pump: string;
  warning: string;
}

export const TONES: Record<'light' | 'black and white', Tone> = {
  light: {
    ink: '#1b2730',
    quiet: '#4d5b66',
    grid: '#d5dce2',
    hookup: '#eef2f5',
    water: '#0a5f93',
    pump: '#1b2730',
    warning: '#a33c00',
  },
  'black and white': {
    ink: '#000000',
    quiet: '#333333',
    grid: '#cccccc',
    hookup: '#f2f2f2',
    water: '#000000',
    pump: '#000000',
    warning: '#000000',
  },
};
