/** All checks. A new one is a file of its own and a line here. */
import { addressOutside } from './address-outside.ts';
import { addressTaken } from './address-taken.ts';
import { badDate } from './bad-date.ts';
import { badFormat } from './bad-format.ts';
import { badNumber } from './bad-number.ts';
import { cableMissing } from './cable-missing.ts';
import { cableWrong } from './cable-wrong.ts';
import { carriageDiffers } from './carriage-differs.ts';
import { caseHeavy } from './case-heavy.ts';
import { caseOver } from './case-over.ts';
import type { Check, CheckText } from './check.ts';
import { circuitOver } from './circuit-over.ts';
import { circuitUnrated } from './circuit-unrated.ts';
import { curlyQuotes } from './curly-quotes.ts';
import { cycle } from './cycle.ts';
import { decimalComma } from './decimal-comma.ts';
import { delayOver } from './delay-over.ts';
import { destinationUnfed } from './destination-unfed.ts';
import { duplicateName } from './duplicate-name.ts';
import { encryptedLeaves } from './encrypted-leaves.ts';
import { equalRoutes } from './equal-routes.ts';
import { feedRepeated } from './feed-repeated.ts';
import { firmwareMixed } from './firmware-mixed.ts';
import { formatDoubtful } from './format-doubtful.ts';
import { formatNotCarried } from './format-not-carried.ts';
import { formatNotTaken } from './format-not-taken.ts';
import { formatTooBig } from './format-too-big.ts';
import { formatUnknown } from './format-unknown.ts';
import { fromMemory } from './from-memory.ts';
import { importMissing } from './import-missing.ts';
import { incomplete } from './incomplete.ts';
import { interfaceMismatch } from './interface-mismatch.ts';
import { kitMissing } from './kit-missing.ts';
import { kitPorts } from './kit-ports.ts';
import { lengthUnknown } from './length-unknown.ts';
import { libraryReplaced } from './library-replaced.ts';
import { linkHeadroom } from './link-headroom.ts';
import { linkNearLimit } from './link-near-limit.ts';
import { linkOverload } from './link-overload.ts';
import { linkReach } from './link-reach.ts';
import { linkSlowed } from './link-slowed.ts';
import { linkUnused } from './link-unused.ts';
import { lipSync } from './lip-sync.ts';
import { nameLong } from './name-long.ts';
import { noRoute } from './no-route.ts';
import { nodeUnused } from './node-unused.ts';
import { notPowered } from './not-powered.ts';
import { nothingAccepted } from './nothing-accepted.ts';
import { nothingMeasured } from './nothing-measured.ts';
import { nothingProved } from './nothing-proved.ts';
import { nothingReplaced } from './nothing-replaced.ts';
import { openString } from './open-string.ts';
import { planMissing } from './plan-missing.ts';
import { planTwice } from './plan-twice.ts';
import { poeOver } from './poe-over.ts';
import { poeStarved } from './poe-starved.ts';
import { portDirection } from './port-direction.ts';
import { portTaken } from './port-taken.ts';
import { prefixTooSmall } from './prefix-too-small.ts';
import { prefixWrong } from './prefix-wrong.ts';
import { rateDiffers } from './rate-differs.ts';
import { reachUnknown } from './reach-unknown.ts';
import { recordingUnknown } from './recording-unknown.ts';
import { redundantBroken } from './redundant-broken.ts';
import { seamlessShared } from './seamless-shared.ts';
import { selfLink } from './self-link.ts';
import { sourceUnused } from './source-unused.ts';
import { spareMissing } from './spare-missing.ts';
import { standbySameRun } from './standby-same-run.ts';
import { standbyShares } from './standby-shares.ts';
import { stockMissing } from './stock-missing.ts';
import { toolFault } from './tool-fault.ts';
import { twoPictures } from './two-pictures.ts';
import { unitMissing } from './unit-missing.ts';
import { unknownName } from './unknown-name.ts';
import { unknownPort } from './unknown-port.ts';
import { unknownUnit } from './unknown-unit.ts';
import { unknownWord } from './unknown-word.ts';
import { unreadable } from './unreadable.ts';
import { uplinkOver } from './uplink-over.ts';
import { uplinkUnknown } from './uplink-unknown.ts';
import { viaMissed } from './via-missed.ts';
import { writtenTwice } from './written-twice.ts';
import { wrongDimension } from './wrong-dimension.ts';

/** What is written wrongly inside one statement. */
export const faultChecks: readonly Check[] = [
  wrongDimension,
  unitMissing,
  unknownUnit,
  decimalComma,
  badNumber,
  badFormat,
  badDate,
  unknownWord,
  writtenTwice,
  nameLong,
  incomplete,
  curlyQuotes,
  openString,
];

/** Every check that is asked about a plan; findings on one statement stand in this order. */
export const planChecks: readonly Check[] = [
  ...faultChecks,
  planMissing,
  planTwice,
  importMissing,
  duplicateName,
  libraryReplaced,
  unknownName,
  unknownPort,
  cycle,
  kitMissing,
  kitPorts,
  selfLink,
  portDirection,
  portTaken,
  interfaceMismatch,
  cableMissing,
  cableWrong,
  linkSlowed,
  lengthUnknown,
  linkReach,
  linkNearLimit,
  reachUnknown,
  fromMemory,
  standbyShares,
  standbySameRun,
  noRoute,
  carriageDiffers,
  viaMissed,
  twoPictures,
  nothingReplaced,
  feedRepeated,
  seamlessShared,
  equalRoutes,
  formatUnknown,
  formatTooBig,
  formatDoubtful,
  formatNotCarried,
  formatNotTaken,
  rateDiffers,
  encryptedLeaves,
  delayOver,
  linkOverload,
  linkHeadroom,
  sourceUnused,
  destinationUnfed,
  linkUnused,
  nodeUnused,
  redundantBroken,
  circuitOver,
  circuitUnrated,
  notPowered,
  poeOver,
  poeStarved,
  uplinkOver,
  uplinkUnknown,
  lipSync,
  recordingUnknown,
  addressTaken,
  addressOutside,
  prefixTooSmall,
  prefixWrong,
  stockMissing,
  spareMissing,
  caseOver,
  caseHeavy,
  firmwareMixed,
  nothingMeasured,
  nothingProved,
];

/** Everything that findings can be called, with its explanation: the checks, and what their runner says itself. */
export const catalogue: readonly CheckText[] = [unreadable, ...planChecks, nothingAccepted, toolFault];

export const checkNames: ReadonlySet<string> = new Set(catalogue.map(({ name }) => name));
