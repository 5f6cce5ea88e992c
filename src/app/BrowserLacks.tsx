/** In place of the workbook where the browser cannot run it. */
export function BrowserLacks({ missing }: { readonly missing: readonly string[] }) {
  return (
    <main className="page projects-page">
      <h1>This browser cannot run the workbook</h1>
      <p>It lacks:</p>
      <ul>
        {missing.map((what) => (
          <li key={what}>{what}</li>
        ))}
      </ul>
      <p>
        Open the workbook in a current browser. If this one is current, a setting, an extension or a lockdown
        mode has switched that off: allow it for this page, then load the page again. Projects that are saved
        in this browser stay as they are.
      </p>
    </main>
  );
}
