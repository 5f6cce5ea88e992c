/** Says a short sentence to a screen reader without moving the focus. */
export function Announcer({ message }: { readonly message: string }) {
  return (
    <div className="visually-hidden" role="status" aria-live="polite">
      {message}
    </div>
  );
}
