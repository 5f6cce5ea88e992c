import { createRoot } from 'react-dom/client';
import '../ui/theme.css';
import '../ui/kit.css';
import '../ui/charts/charts.css';
import './app.css';
import '../sheets/sheets.css';
import '../checklist/checklist.css';
import '../checklist/drawing.css';
import '../checklist/paper.css';
import { createWorkbook } from '../workbook';
import { browserPorts } from '../workbook/browserPorts';
import { App } from './App';
import { BrowserLacks } from './BrowserLacks';
import { missingInBrowser } from './browserNeeds';
import { keepOfflineCopy } from './offline';
import { openOnDemo } from './openOnDemo';
import { applyTheme, readTheme } from './theme';

const root = document.getElementById('root');
if (root === null) throw new Error('index.html has no element with the id "root"');

applyTheme(readTheme());
const missing = missingInBrowser();
if (missing.length > 0) {
  createRoot(root).render(<BrowserLacks missing={missing} />);
} else {
  const workbook = createWorkbook(browserPorts());
  const started = workbook.start();
  createRoot(root).render(<App workbook={workbook} started={started} />);
  void keepOfflineCopy();
  await openOnDemo(started);
}
