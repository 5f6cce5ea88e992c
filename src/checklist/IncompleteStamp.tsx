/** On paper only, over every page; the sheet itself says what is missing. */
export function IncompleteStamp() {
  return (
    <div className="incomplete-stamp" aria-hidden>
      INCOMPLETE
    </div>
  );
}
