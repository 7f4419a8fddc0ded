import { routes, type WorkHistory as Work } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { formatNumber } from '../../shared/i18n/format.ts';
import { TableScroll } from '../../shared/ui/table-scroll.tsx';
import { Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { plural, unitWords } from '../desk/words.ts';

const hours = (value: number): string => formatNumber(value, 'en-US', 3);
const threeHours = (one: Work['book']): string =>
  one ? `${hours(one.low)} / ${hours(one.likely)} / ${hours(one.high)}` : 'not known';

/** What the jobs done say about hours, beside the book's. Nothing here changes the book. */
export function HoursOfJobs() {
  const history = useRoute(routes.getWorkHistory, {});
  return (
    <Part
      title="What your jobs say"
      lead="Hours a unit, from what was entered at repaired findings. The book is changed by your hand only. Few jobs are drawn toward the book: with ten, both count alike."
    >
      <Reading query={history} doing="Reading what the jobs say" rows={3}>
        {({ items }) =>
          items.length === 0 ? (
            <p className="soft">Nothing yet. Hours are entered at a finding once its change order is approved.</p>
          ) : (
            <TableScroll label="What your jobs say">
              <table className="table">
                <caption className="hidden-text">Hours a unit: seen, in the book, and what the book may say</caption>
                <thead>
                  <tr>
                    <th scope="col">Work</th>
                    <th scope="col">Based on</th>
                    <th scope="col" className="number">
                      Seen: lowest / mean / highest
                    </th>
                    <th scope="col" className="number">
                      Book: low / likely / high
                    </th>
                    <th scope="col" className="number">
                      The book may say
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {items.map((item) => (
                    <tr key={`${item.operation} ${item.unit}`}>
                      <td>
                        {item.title.en}, per {unitWords(item.unit)}
                      </td>
                      <td>{plural(item.jobs, 'job')}</td>
                      <td className="number">
                        {hours(item.lowestPerUnit)} / {hours(item.seenPerUnit)} / {hours(item.highestPerUnit)}
                      </td>
                      <td className="number">{threeHours(item.book)}</td>
                      <td className="number">
                        {item.suggested ? <b>{threeHours(item.suggested)}</b> : 'too few jobs to say'}
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </TableScroll>
          )
        }
      </Reading>
    </Part>
  );
}
