import './without-eval.ts';
import '../shared/look/base.css';
import { createRoot } from 'react-dom/client';
import { App } from './app.tsx';
import { keepForOffline } from './offline.ts';

const root = document.getElementById('root');
if (root) createRoot(root).render(<App />);
keepForOffline();
