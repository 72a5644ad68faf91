/** The page starts here: type, colours, then the screens. */
import '@fontsource/barlow/latin-400.css';
import '@fontsource/barlow/latin-600.css';
import '@fontsource/barlow-condensed/latin-500.css';
import '@fontsource/barlow-condensed/latin-600.css';
import './pages/styles/index.css';
import { render } from 'preact';
import { App } from './pages/app.tsx';
import { keepFocus } from './pages/parts/focus-keeper.ts';
import { startWords } from './pages/words/words.ts';

startWords();
keepFocus();
const host = document.getElementById('app');
if (host !== null) render(<App />, host);
