export function BenchPane(_: any) { return <aside className="view-pane"/>; }
