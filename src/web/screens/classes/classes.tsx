import '../../styles/enter.css';
import '../../styles/roll.css';
import '../../styles/classes.css';
import { me, roleOf } from '../../me.ts';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { set, words } from '../../words.ts';
import { Class } from './class.tsx';
import { routeOf } from './classes-route.ts';
import { List } from './list.tsx';
import { NewClass } from './new-class.tsx';
import { People } from './people/people.tsx';

/** Classes, for whoever teaches them; and the people of the installation, for who looks after it. */
export function Classes({ detail }: ScreenProps) {
  const at = routeOf(detail);
  const role = roleOf(me.value);
  if (role === 'learner')
    return (
      <p>{set(words('classes').list.forTutors, { account: (text) => <a href="#/account">{text}</a> })}</p>
    );
  if (at.at === 'class') return <Class key={at.class} id={at.class} part={at.part} />;
  return (
    <div class="classes">
      {at.at === 'new' ? <NewClass /> : at.at === 'people' && role === 'admin' ? <People /> : <List />}
    </div>
  );
}
