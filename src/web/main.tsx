import '@fontsource/source-sans-3/latin-400.css';
import '@fontsource/source-sans-3/latin-600.css';
import '@fontsource/source-sans-3/latin-700.css';
import './look/base.css';
import './look/sheet.css';
import './look/parts.css';
import './look/walk.css';
import './look/fit.css';
import './look/check.css';
import './look/bend.css';
import './look/shop.css';
import './look/handout.css';
import './look/print.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { Pages } from './Pages.js';

createRoot(document.getElementById('root')!).render(<StrictMode><Pages /></StrictMode>);
