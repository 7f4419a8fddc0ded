import '../shared/look/base.css';
import { createRoot } from 'react-dom/client';

const root = document.getElementById('root');
if (root) createRoot(root).render(<main className="sheet">Underlath</main>);
