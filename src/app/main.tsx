import { createRoot } from 'react-dom/client';
import '../ui/theme.css';
import '../ui/kit.css';
import './app.css';
import '../sheets/sheets.css';
import '../checklist/checklist.css';
import { App } from './App';
import { createWorkbook } from '../workbook';
import { browserPorts } from '../workbook/browserPorts';
import { goTo, parseRoute, projectHref } from './route';
import { applyTheme, readTheme } from './theme';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no element with the id "root"');

applyTheme(readTheme());
const workbook = createWorkbook(browserPorts());
const firstVisit = workbook.store.getState().projects.length === 0;
createRoot(root).render(<App workbook={workbook} />);

await workbook.start();
const [demo] = workbook.store.getState().projects;
// The very first start opens on the demo; whoever follows a link to a project gets that one.
if (firstVisit && demo !== undefined && parseRoute(window.location.hash).page === 'projects') {
  goTo(projectHref(demo.id, 'walls'));
}
