import { Button } from '../../ui/Button';
import type { Printing } from './usePrinting';

/** Says what printing waits for, and lets the maker print what there is or give it up. */
export function PrintWait({ printing, reason }: { readonly printing: Printing; readonly reason: string }) {
  return (
    <section className="print-wait" aria-label="Printing">
      <p role="status">The checklist is printed as soon as everything is worked out. {reason}</p>
      <div className="button-row">
        <Button onClick={printing.printNow}>Print now, marked incomplete</Button>
        <Button onClick={printing.dontPrint}>Do not print</Button>
      </div>
    </section>
  );
}
