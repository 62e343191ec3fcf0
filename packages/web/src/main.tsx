import '@fontsource/ibm-plex-sans/latin-400.css';
import '@fontsource/ibm-plex-sans/latin-500.css';
import '@fontsource/ibm-plex-sans/latin-600.css';
import '@fontsource/ibm-plex-sans-condensed/latin-500.css';
import '@fontsource/ibm-plex-sans-condensed/latin-600.css';
import './theme/tokens.css';
import './theme/class-colours.css';
import './theme/base.css';
import './app/app.css';
import './editing/editing.css';
import './lay/lay.css';
import './lay/captions.css';
import './lay/figures.css';
import './lay/close-up.css';
import './settings/settings.css';
import './places/places.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Shell } from './places/Shell.tsx';
import { startAutosave } from './plan-store/autosave.ts';

startAutosave();

const root = document.getElementById('root');
if (!root) throw new Error('The page has no element with the id "root" to draw in.');
createRoot(root).render(
  <StrictMode>
    <Shell />
  </StrictMode>,
);
