/**
 * The parts of the papers that need large libraries: layout, PDF, fonts, PNG. They are bundled apart, so that no other
 * command loads them.
 */
export { scenePlacer } from './drawing/place-scene.ts';
export { labelPdf } from './labels/label-pdf.ts';
export { testPicturePng } from './test-pictures/png.ts';
export { testPictureSvg } from './test-pictures/svg.ts';
export { makeTestPicture, pictureSubjects } from './test-pictures/test-picture.ts';
export { Faces } from './typeset/faces.ts';
export { unpackWoff } from './typeset/unpack-woff.ts';
