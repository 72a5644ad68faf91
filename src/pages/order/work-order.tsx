/** The work order: what is known before the machine is touched. */
import type { JobSpec } from '../../job/index.ts';
import type { Model } from '../../machine/index.ts';
import { plain } from '../words/plain.ts';
import { t } from '../words/words.ts';

export function WorkOrder({ job, model }: { job: JobSpec; model: Model }) {
  const { hours, history, operatorSays, onArrival } = job.workOrder;
  const rows = [
    [t('order.machine'), model.book.title],
    [t('order.hours'), t('order.hoursValue', { hours })],
    [t('order.complaint'), job.title],
    [t('order.operator'), operatorSays],
    [t('order.history'), history],
    [t('order.arrival'), onArrival],
  ];
  return (
    <dl class="order-rows">
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{plain(model, value ?? '')}</dd>
        </div>
      ))}
    </dl>
  );
}
