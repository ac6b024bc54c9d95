import { testPackagedExtension } from './acceptance.ts';
import { openWebHost } from './web-host.ts';

testPackagedExtension('an extension host in the browser', openWebHost);
