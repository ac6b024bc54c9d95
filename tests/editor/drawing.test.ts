import { testDrawing } from './drawing-acceptance.ts';
import { openNodeHost } from './node-host.ts';
import { openWebHost } from './web-host.ts';

testDrawing('a Node extension host', openNodeHost);
testDrawing('a browser extension host', openWebHost);
