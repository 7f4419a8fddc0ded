import { routes } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { Page } from '../parts/page.tsx';
import { Reading } from '../parts/reading.tsx';

export function CostBookScreen() {
  const book = useRoute(routes.getCostBook, {});
  return (
    <Page title="Cost book">
      <Reading query={book} doing="Reading the cost book">
        {() => null}
      </Reading>
    </Page>
  );
}
