import '../shared/look/base.css';
import './client.css';
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { LocaleProvider } from '../shared/i18n/locale.tsx';
import { ClientPage } from './client-page.tsx';
import { printWhole } from './print.ts';

printWhole();
const root = document.getElementById('root');
if (root) {
  createRoot(root).render(
    <StrictMode>
      <QueryClientProvider client={new QueryClient()}>
        <LocaleProvider>
          <main className="letter">
            <ClientPage />
          </main>
        </LocaleProvider>
      </QueryClientProvider>
    </StrictMode>,
  );
}
