import { testPackagedExtension } from './acceptance.ts';
import { openNodeHost } from './node-host.ts';

testPackagedExtension('a Node extension host', openNodeHost);
