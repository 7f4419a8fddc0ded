import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { LocaleProvider } from '../shared/i18n/locale.tsx';
import { StatusProvider } from '../shared/ui/status.tsx';
import { router } from './router.tsx';

const queryClient = new QueryClient({
  defaultOptions: { queries: { staleTime: 5_000 } },
});

export function App() {
  return (
    <StrictMode>
      <QueryClientProvider client={queryClient}>
        <LocaleProvider>
          <StatusProvider>
            <RouterProvider router={router} />
          </StatusProvider>
        </LocaleProvider>
      </QueryClientProvider>
    </StrictMode>
  );
}
