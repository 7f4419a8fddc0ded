import { Link } from '@tanstack/react-router';
import type { ProjectOverview, Todo } from '@underlath/contract';
import type { ReactNode } from 'react';
import { buttonClass } from '../../shared/ui/button.tsx';
import { SeverityMark, SeverityNote, SeverityShape } from '../../shared/ui/severity.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { HouseSketch } from '../house/house-sketch.tsx';
import { useOverview, useProjectId } from './project-frame.tsx';
import './to-do.css';

type Kind = Todo['kind'];

/** Who has to move, in the order in which they are shown. */
const people: { title: string; kinds: readonly Kind[] }[] = [
  { title: 'The engineer', kinds: ['engineer'] },
  {
    title: 'You',
    kinds: ['notice-overdue', 'notice', 'mail-failed', 'answer-question', 'mail-waiting', 'price', 'offer'],
  },
  { title: 'The crew', kinds: ['measure', 'repair', 'prove', 'photo-failed'] },
  { title: 'The client', kinds: ['await-client'] },
];

const whatToDo: Record<Kind, string> = {
  'make-safe': 'Make safe',
  'notice-overdue': 'Overdue: send the heads-up notice',
  notice: 'Send the heads-up notice',
  engineer: 'Get the engineer’s decision',
  price: 'Price it',
  offer: 'Send to client',
  'answer-question': 'Answer the client',
  'mail-failed': 'An e-mail was not delivered: send it again',
  'mail-waiting': 'An e-mail still waits to go out',
  'await-client': 'Waiting for an answer',
  repair: 'Repair it',
  prove: 'Measure again and photograph before cover',
  'photo-failed': 'Look at a photo that failed',
  measure: 'Finish measuring',
};

export function ToDoScreen() {
  const overview = useOverview();
  return (
    <Page title="To do" of={overview.data?.project.name} wide>
      <Reading query={overview} doing="Reading what is to do" rows={6}>
        {(data) =>
          data.todo.length === 0 ? (
            <NothingToDo overview={data} />
          ) : (
            <div className="todo-page">
              <Lists todo={data.todo} />
              <HouseSketch />
            </div>
          )
        }
      </Reading>
    </Page>
  );
}

function NothingToDo({ overview }: { overview: ProjectOverview }) {
  const params = { projectId: overview.project.id };
  if (overview.findingCount > 0) {
    return (
      <EmptyState title="Nothing waits for anyone">
        <p>Every finding is dealt with. New ones from the site appear here at once.</p>
      </EmptyState>
    );
  }
  return (
    <EmptyState
      title="No findings yet"
      action={
        <Link to="/projects/$projectId/house" params={params} search={{}} className={buttonClass('go')}>
          Lay out the house
        </Link>
      }
    >
      <p>
        Add the stories, rooms, walls and floors first, with their sizes, so that findings have a place on a drawing.
        The crew then records what they uncover from their phones.
      </p>
    </EmptyState>
  );
}

function Lists({ todo }: { todo: readonly Todo[] }) {
  const urgent = todo.filter((item) => item.kind === 'make-safe');
  return (
    <div className="todo">
      {urgent.length > 0 && (
        <SeverityNote severity="make-safe">
          <p>
            People out from under it, stop work there, shore under the direction of a qualified person, then record.
          </p>
          <ul className="todo-urgent">
            {urgent.map((item) => (
              <li key={`${item.findingId}`}>
                <TodoLink item={item}>
                  {item.title}, {item.where}
                </TodoLink>{' '}
                <span>
                  since <Stamp at={item.since} look="day-time" />
                </span>
              </li>
            ))}
          </ul>
        </SeverityNote>
      )}
      {people.map(({ title, kinds }) => {
        const items = todo.filter((item) => kinds.includes(item.kind));
        return items.length > 0 && <PersonList key={title} title={title} items={items} />;
      })}
      <p className="todo-legend soft small">
        Marks:{' '}
        {(['make-safe', 'engineer', 'repair', 'record'] as const).map((severity) => (
          <SeverityMark key={severity} severity={severity} />
        ))}
      </p>
    </div>
  );
}

function PersonList({ title, items }: { title: string; items: readonly Todo[] }) {
  return (
    <section className="todo-person">
      <h2>
        {title} <span className="soft todo-count">{items.length}</span>
      </h2>
      <ul>
        {items.map((item) => (
          <li key={`${item.kind}${item.findingId}${item.changeOrderId}${item.since}`} className="todo-row">
            <span className="todo-mark">
              {item.severity && (
                <>
                  <SeverityShape severity={item.severity} />
                  <span className="hidden-text">{item.severity}</span>
                </>
              )}
            </span>
            <span>
              <TodoLink item={item}>{item.title}</TodoLink>
              <span className="soft"> {item.where}</span>
            </span>
            <span className="todo-what">{whatToDo[item.kind]}</span>
            <span className="soft number">
              {item.dueOn && (item.kind === 'notice-overdue' ? 'was due ' : 'by ')}
              <Stamp at={item.dueOn ?? item.since} look="day" />
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Straight to where it is done. */
function TodoLink({ item, children }: { item: Todo; children: ReactNode }) {
  const projectId = useProjectId();
  if (item.changeOrderId && item.kind !== 'repair' && item.kind !== 'prove') {
    return (
      <Link
        to="/projects/$projectId/change-orders/$changeOrderId"
        params={{ projectId, changeOrderId: item.changeOrderId }}
      >
        {children}
      </Link>
    );
  }
  if (item.findingId && item.kind === 'price') {
    return (
      <Link to="/projects/$projectId/findings/$findingId/price" params={{ projectId, findingId: item.findingId }}>
        {children}
      </Link>
    );
  }
  if (item.findingId && item.kind === 'offer') {
    return (
      <Link to="/projects/$projectId/change-orders/new" params={{ projectId }}>
        {children}
      </Link>
    );
  }
  if (item.findingId) {
    return (
      <Link to="/projects/$projectId/house" params={{ projectId }} search={{ finding: item.findingId }}>
        {children}
      </Link>
    );
  }
  return (
    <Link to="/projects/$projectId/photos" params={{ projectId }} search={{}}>
      {children}
    </Link>
  );
}
