import '@fontsource/source-sans-3/latin-400.css';
import '@fontsource/source-sans-3/latin-600.css';
import '@fontsource/source-sans-3/latin-700.css';
import './styles/base.css';
import './styles/sheet.css';
import './styles/parts.css';
import './styles/walk.css';
import './styles/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Pages } from './Pages.js';

createRoot(document.getElementById('root')!).render(<StrictMode><Pages /></StrictMode>);
