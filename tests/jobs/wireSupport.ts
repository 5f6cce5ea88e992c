import type { BenchWorker } from '../../src/jobs/protocol';
import { exposeBench, wrapBench } from '../../src/jobs/wire';

/** A bench seen through a real message channel: everything is cloned or transferred as to a worker. */
export function overMessages(bench: BenchWorker): { bench: BenchWorker; end: () => void } {
  const { port1, port2 } = new MessageChannel();
  exposeBench(bench, port1);
  return {
    bench: wrapBench(port2),
    end: () => {
      port1.close();
      port2.close();
    },
  };
}
